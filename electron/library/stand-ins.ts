/** What stands in a text for names: whole words alone, in whatever case, and of two that begin at one place the longer. */
export class StandIns {
  readonly #byName: ReadonlyMap<string, string>;
  /** By the first word of a name: where the name begins before it, and how long it is, the longest first. */
  readonly #shapes = new Map<string, Shape[]>();

  constructor(names: readonly (readonly [name: string, standIn: string])[]) {
    this.#byName = new Map(names.map(([name, standIn]) => [name.toLowerCase(), standIn]));
    for (const [name] of names) {
      const first = /[\p{L}\p{N}]+/u.exec(name);
      if (first) this.#addShape(first[0].toLowerCase(), { before: first.index, length: name.length });
    }
    for (const shapes of this.#shapes.values()) shapes.sort((a, b) => b.length - a.length);
  }

  /** The text without the names, in one pass: what stands for one is not looked at again. */
  in(text: string): string {
    let written = '';
    let at = 0;
    for (const word of text.matchAll(/[\p{L}\p{N}]+/gu)) {
      const found = word.index < at ? null : this.#nameAt(text, at, word.index, word[0]);
      if (found === null) continue;
      written += text.slice(at, found.from) + found.standIn;
      at = found.to;
    }
    return written + text.slice(at);
  }

  /** Looked up by its length, so that a library with thousands of logs takes no longer over a text. */
  #nameAt(text: string, earliest: number, wordAt: number, word: string): Found | null {
    for (const { before, length } of this.#shapes.get(word.toLowerCase()) ?? []) {
      const from = wordAt - before;
      const to = from + length;
      const standIn = this.#byName.get(text.slice(Math.max(from, 0), to).toLowerCase());
      if (standIn !== undefined && from >= earliest && isApart(text, from, to)) return { from, to, standIn };
    }
    return null;
  }

  #addShape(word: string, shape: Shape): void {
    const shapes = this.#shapes.get(word) ?? [];
    if (!shapes.some(({ before, length }) => before === shape.before && length === shape.length))
      shapes.push(shape);
    this.#shapes.set(word, shapes);
  }
}

interface Shape {
  readonly before: number;
  readonly length: number;
}

interface Found {
  readonly from: number;
  readonly to: number;
  readonly standIn: string;
}

/** Whether no letter or figure stands right before or behind. */
function isApart(text: string, from: number, to: number): boolean {
  return (
    !/[\p{L}\p{N}]$/u.test(text.slice(Math.max(from - 2, 0), from)) &&
    !/^[\p{L}\p{N}]/u.test(text.slice(to, to + 2))
  );
}
