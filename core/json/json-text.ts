/** Keys and list indices from the top down to a value. */
export type JsonPath = readonly (string | number)[];

/** A JSON text, read, with the place of each key; or the place where it stops being JSON. */
export type JsonReading =
  | {
      readonly ok: true;
      readonly value: unknown;
      /** Line that the key at a path stands on, counted from 1; its nearest known parent's when it is missing. */
      readonly lineOf: (path: JsonPath) => number;
      /** Keys given twice in one object: `JSON.parse` would silently keep the last. */
      readonly repeated: readonly JsonPath[];
    }
  | { readonly ok: false; readonly line: number; readonly column: number; readonly problem: string };

/**
 * Reads JSON (RFC 8259) and remembers where everything stood. The engine's own parser tells a place only in the
 * words of its errors, which differ between engines and are not to be decided by.
 */
export function readJson(text: string): JsonReading {
  const body = text.replace(/^\uFEFF/, '');
  const scanner = new JsonScanner(body);
  try {
    scanner.document();
  } catch (stop) {
    if (!(stop instanceof NotJson)) throw stop;
    return { ok: false, ...placeOf(body, stop.offset), problem: stop.message };
  }
  const { places, repeated } = scanner;
  const lineOf = (path: JsonPath): number => {
    for (let depth = path.length; depth > 0; depth--) {
      const offset = places.get(keyOf(path.slice(0, depth)));
      if (offset !== undefined) return placeOf(body, offset).line;
    }
    return 1;
  };
  return { ok: true, value: JSON.parse(body), lineOf, repeated };
}

/** Ends the scan at the first offence; never leaves this file. */
class NotJson extends Error {
  readonly offset: number;
  constructor(problem: string, offset: number) {
    super(problem);
    this.offset = offset;
  }
}

const MAX_DEPTH = 32;
const SPACE = /[ \t\n\r]*/y;
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const NUMBER_OR_WORD = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

const keyOf = (path: JsonPath): string => JSON.stringify(path);

function placeOf(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { line: before.length, column: before.at(-1)!.length + 1 };
}

class JsonScanner {
  readonly places = new Map<string, number>();
  readonly repeated: JsonPath[] = [];
  readonly #text: string;
  #offset = 0;

  constructor(text: string) {
    this.#text = text;
  }

  document(): void {
    this.#value([]);
    this.#take(SPACE);
    if (this.#offset < this.#text.length) this.#fail('nothing more was expected');
  }

  #value(path: JsonPath): void {
    if (path.length > MAX_DEPTH) this.#fail(`more than ${MAX_DEPTH} levels of brackets were not expected`);
    this.#take(SPACE);
    if (this.#skip('{')) this.#list('}', () => this.#member(path));
    else if (this.#skip('[')) this.#list(']', (index) => this.#value([...path, index]));
    else if (this.#take(STRING) === null && this.#take(NUMBER_OR_WORD) === null)
      this.#fail('a value was expected');
  }

  /** The inside of brackets: items with commas between them, none after the last. */
  #list(end: '}' | ']', item: (index: number) => void): void {
    this.#take(SPACE);
    if (this.#skip(end)) return;
    for (let index = 0; ; index++) {
      item(index);
      this.#take(SPACE);
      if (this.#skip(end)) return;
      if (!this.#skip(',')) this.#fail(`a comma or ${end} was expected`);
    }
  }

  #member(path: JsonPath): void {
    this.#take(SPACE);
    const at = this.#offset;
    const quoted = this.#take(STRING);
    if (quoted === null) this.#fail('a key in double quotes was expected');
    const memberPath = [...path, JSON.parse(quoted) as string];
    if (this.places.has(keyOf(memberPath))) this.repeated.push(memberPath);
    this.places.set(keyOf(memberPath), at);
    this.#take(SPACE);
    if (!this.#skip(':')) this.#fail('a colon was expected');
    this.#value(memberPath);
  }

  #take(pattern: RegExp): string | null {
    pattern.lastIndex = this.#offset;
    const found = pattern.exec(this.#text);
    if (found === null) return null;
    this.#offset = pattern.lastIndex;
    return found[0];
  }

  #skip(character: string): boolean {
    if (this.#text[this.#offset] !== character) return false;
    this.#offset++;
    return true;
  }

  #fail(expected: string): never {
    const found = this.#text.codePointAt(this.#offset);
    const here =
      found === undefined ? 'the file ends' : `it has ${JSON.stringify(String.fromCodePoint(found))}`;
    throw new NotJson(`${expected}, ${here}`, this.#offset);
  }
}
