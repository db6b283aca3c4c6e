interface Encoder {
  encodeInto(text: string, into: Uint8Array): { readonly written: number };
}

/** Every host of the program has one; their types are not the language's. */
const ENCODER = new (globalThis as unknown as { TextEncoder: new () => Encoder }).TextEncoder();
/** Stands for a character that has no code of one byte. */
const WIDE = 255;

/**
 * The codes of a text's characters, a byte each, in memory that is used again for the next text: numbers are read from
 * it several times as fast as from the text. What is not ASCII has a code that no digit, sign or delimiter has.
 */
export class CharCodes {
  #bytes = new Uint8Array(0);

  of(text: string): Uint8Array {
    // As the encoder may write as many for one character, and never writes half of one.
    if (this.#bytes.length < 3 * text.length) this.#bytes = new Uint8Array(4 * text.length);
    const { written } = ENCODER.encodeInto(text, this.#bytes);
    if (written > text.length)
      for (let i = 0; i < text.length; i++) this.#bytes[i] = Math.min(WIDE, text.charCodeAt(i));
    return this.#bytes;
  }
}
