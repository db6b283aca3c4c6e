/** How a host tells UTF-8 and makes text of it: each has a way of its own that is fastest. */
export interface Utf8 {
  isUtf8(bytes: Uint8Array): boolean;
  textOf(bytes: Uint8Array): string;
}

/**
 * Turns bytes into text as they come: UTF-16 by its mark, UTF-8 with or without a mark, and Windows-1252 from the
 * first byte on that is no UTF-8. Any sequence of bytes gives some text: what it is worth is the reader's to say.
 */
export class TextDecoding {
  #begun = false;
  /** Null while all bytes were UTF-8. */
  #decoder: InstanceType<typeof TextDecoder> | null = null;
  #pending = new Uint8Array(0);
  readonly #utf8: Utf8;

  constructor(utf8: Utf8) {
    this.#utf8 = utf8;
  }

  /** Text of the next bytes; an unfinished character is kept for the next call. */
  decode(bytes: Uint8Array): string {
    return this.#decode(bytes, false);
  }

  /** Text of what was left over when the bytes ended. */
  end(): string {
    return this.#decode(new Uint8Array(0), true);
  }

  #decode(bytes: Uint8Array, last: boolean): string {
    const all = this.#pending.length === 0 ? bytes : joined(this.#pending, bytes);
    if (!this.#begun && all.length < 3 && !last) {
      this.#pending = all.slice();
      return '';
    }
    if (!this.#begun) this.#decoder = decoderByMark(all);
    this.#begun = true;
    if (!this.#decoder) {
      // Whole characters only, so that a chunk's edge is not mistaken for a byte that is no UTF-8.
      const whole = last ? all.length : wholeCharacters(all);
      const characters = all.subarray(0, whole);
      if (this.#utf8.isUtf8(characters)) {
        this.#pending = all.slice(whole);
        return this.#utf8.textOf(characters);
      }
      this.#decoder = new TextDecoder('windows-1252');
    }
    this.#pending = new Uint8Array(0);
    return this.#decoder.decode(all, { stream: !last });
  }
}

function decoderByMark(head: Uint8Array): InstanceType<typeof TextDecoder> | null {
  if (head[0] === 0xff && head[1] === 0xfe) return new TextDecoder('utf-16le');
  if (head[0] === 0xfe && head[1] === 0xff) return new TextDecoder('utf-16be');
  return null;
}

/** How many of the bytes make whole UTF-8 characters: all but an unfinished sequence of up to three at the end. */
function wholeCharacters(bytes: Uint8Array): number {
  for (let back = 1; back <= 3 && back <= bytes.length; back++) {
    const byte = bytes[bytes.length - back]!;
    const isContinuation = (byte & 0xc0) === 0x80;
    if (isContinuation) continue;
    const length = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : byte >= 0xc0 ? 2 : 1;
    return length > back ? bytes.length - back : bytes.length;
  }
  return bytes.length;
}

function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const all = new Uint8Array(first.length + second.length);
  all.set(first);
  all.set(second, first.length);
  return all;
}
