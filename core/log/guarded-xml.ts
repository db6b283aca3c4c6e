import { SaxesParser } from 'saxes';

/** Deeper than any track log nests, with room for extensions. */
const LEVELS_MAX = 32;
/** Longer than any text, attribute, comment or declaration of a track log. */
const TEXT_MAX_CHARS = 64 * 1024;
/** The parser is fed in slices, so that a limit is noticed soon after it is passed. */
const SLICE_CHARS = 16 * 1024;

/** Why and where the reading of XML ended before its end. */
export interface XmlStop {
  readonly kind: 'doctype' | 'too-deep' | 'text-too-long' | 'not-well-formed';
  readonly line: number;
  readonly column: number;
  /** What the parser says, for text that is not well-formed; else ''. */
  readonly message: string;
}

export interface XmlTaker {
  /** An element begins; names without their prefix. */
  open(name: string, attributes: Readonly<Record<string, string>>, line: number): void;
  text(text: string): void;
  close(name: string): void;
}

/**
 * XML from a stranger, element by element. It ends at the first thing that a track log does not have (a document
 * type, deep nesting, endless text) and at the first error, and says where; whatever came before was handed on.
 */
export class GuardedXml {
  /** Set when reading ended early; nothing more is handed on then. */
  stop: XmlStop | null = null;
  readonly #parser = new SaxesParser({ position: true, xmlns: false });
  readonly #taker: XmlTaker;
  #depth = 0;
  #place = { line: 1, column: 0, position: 0 };

  constructor(taker: XmlTaker) {
    this.#taker = taker;
    const parser = this.#parser;
    parser.on('doctype', () => this.#halt('doctype'));
    parser.on('error', (error) => this.#halt('not-well-formed', error.message.replace(/^\d+:\d+: /, '')));
    parser.on('opentag', (tag) => this.#open(tag.name, tag.attributes));
    parser.on('closetag', (tag) => this.#close(tag.name));
    parser.on('attribute', (attribute) => this.#passed(attribute.value.length));
    parser.on('text', (text) => this.#text(text));
    parser.on('cdata', (text) => this.#text(text));
    parser.on('comment', (text) => this.#passed(text.length));
    parser.on('processinginstruction', (instruction) => this.#passed(instruction.body.length));
  }

  write(text: string): void {
    for (let at = 0; at < text.length && this.stop === null; at += SLICE_CHARS) {
      this.#parser.write(text.slice(at, at + SLICE_CHARS));
      // Something that has gone on for so long without an event would only be refused when it ends.
      if (this.#parser.position - this.#place.position > TEXT_MAX_CHARS + SLICE_CHARS)
        this.#haltAtStart('text-too-long');
    }
  }

  end(): void {
    if (this.stop === null) this.#parser.close();
  }

  #open(name: string, attributes: Readonly<Record<string, string>>): void {
    this.#passed(0);
    this.#depth++;
    if (this.#depth > LEVELS_MAX) this.#halt('too-deep');
    if (this.stop === null) this.#taker.open(localName(name), attributes, this.#parser.line);
  }

  #close(name: string): void {
    this.#passed(0);
    this.#depth--;
    if (this.stop === null) this.#taker.close(localName(name));
  }

  #text(text: string): void {
    this.#passed(text.length);
    if (this.stop === null) this.#taker.text(text);
  }

  #passed(length: number): void {
    if (length > TEXT_MAX_CHARS) this.#haltAtStart('text-too-long');
    const { line, column, position } = this.#parser;
    this.#place = { line, column, position };
  }

  #halt(kind: XmlStop['kind'], message = ''): void {
    const { line, column } = this.#parser;
    this.stop ??= { kind, line, column, message };
  }

  /** Ends where the thing that is too long began, so that it does not matter how the text was cut. */
  #haltAtStart(kind: XmlStop['kind']): void {
    const { line, column } = this.#place;
    this.stop ??= { kind, line, column, message: '' };
  }
}

function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}
