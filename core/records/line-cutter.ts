/** A record has 132 columns; nothing that stands so far to the right is of one. */
const LINE_MAX_CHARS = 400;

/**
 * Cuts text that arrives in blocks into lines, whatever ends them. Of a line that runs over several blocks the
 * beginning is kept, so that a text without line ends does not fill the memory.
 */
export class LineCutter {
  #rest = '';
  #endsInReturn = false;

  /** The lines that end in this block. */
  push(block: string): readonly string[] {
    let text = this.#rest + (this.#endsInReturn ? '\r' : '') + block;
    // Behind it may come the other half of a line end.
    this.#endsInReturn = text.endsWith('\r');
    if (this.#endsInReturn) text = text.slice(0, -1);
    if (text.includes('\r')) text = text.replaceAll('\r\n', '\n').replaceAll('\r', '\n');
    const lines = text.split('\n');
    this.#rest = lines.pop()!.slice(0, LINE_MAX_CHARS);
    return lines;
  }

  /** What stands behind the last line end. */
  end(): string {
    return this.#rest;
  }
}
