import { latitudeOf, longitudeOf } from './coordinates.ts';
import { bearingOf, variationOf, type RecordBearing, type RecordVariation } from './bearings.ts';

/** A record read, or what of it could not be: "columns 33 to 41 hold "N39X93182"". */
export type Decoded<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: string };

/**
 * The fields of one record by their columns, counted from 1 as ARINC 424 counts them, both ends included. A blank
 * field is null. A field that is there and cannot be read, or must be there and is blank, makes a fault of the
 * whole record: nothing of it is guessed. A line that is shorter than 132 columns lost trailing blanks.
 */
export class Columns {
  /** The first thing that could not be read. */
  fault: string | null = null;
  readonly #line: string;

  constructor(line: string) {
    this.#line = line;
  }

  /** The text of the columns without the blanks around it; empty where they are blank. */
  text(from: number, to: number): string {
    return this.#line.slice(from - 1, to).trim();
  }

  /** One column as it is, a blank for one that the line does not reach. */
  mark(column: number): string {
    return this.#line[column - 1] ?? ' ';
  }

  isBlank(from: number, to: number): boolean {
    return this.text(from, to) === '';
  }

  /** A name that must be there. */
  name(from: number, to: number): string {
    const text = this.text(from, to);
    if (text === '') this.#fail(from, to);
    return text;
  }

  /** A whole number, signed or not, as so many units: `per` is 10 where the columns hold tenths. */
  number(from: number, to: number, per = 1): number | null {
    return this.#read(from, to, (text) => (/^[+-]?\d+$/.test(text) ? wholeOf(text) / per : null));
  }

  /** A number that must be there; NaN with a fault where it is not. */
  needed(from: number, to: number, per = 1): number {
    return this.#required(from, to, this.number(from, to, per)) ?? Number.NaN;
  }

  /** Feet above mean sea level, or hundreds of feet behind `FL`. */
  altitudeFt(from: number, to: number): number | null {
    return this.#read(from, to, (text) => {
      if (/^[+-]?\d+$/.test(text)) return wholeOf(text);
      return /^FL\d+$/.test(text) ? Number(text.slice(2)) * 100 : null;
    });
  }

  bearing(from: number, to: number): RecordBearing | null {
    return this.#read(from, to, bearingOf);
  }

  variation(from: number, to: number): RecordVariation | null {
    return this.#read(from, to, variationOf);
  }

  /** A position whose latitude (nine columns) begins there, its longitude (ten) behind it; null where both are blank. */
  position(from: number): { readonly latDeg: number; readonly lonDeg: number } | null {
    if (this.isBlank(from, from + 18)) return null;
    return this.neededPosition(from);
  }

  neededPosition(from: number): { readonly latDeg: number; readonly lonDeg: number } {
    const latDeg = this.#read(from, from + 8, latitudeOf);
    const lonDeg = this.#read(from + 9, from + 18, longitudeOf);
    return {
      latDeg: this.#required(from, from + 8, latDeg) ?? Number.NaN,
      lonDeg: this.#required(from + 9, from + 18, lonDeg) ?? Number.NaN,
    };
  }

  #read<T>(from: number, to: number, reading: (text: string) => T | null): T | null {
    const text = this.text(from, to);
    if (text === '') return null;
    const value = reading(text);
    if (value === null) this.#fail(from, to);
    return value;
  }

  #required<T>(from: number, to: number, value: T | null): T | null {
    if (value === null) this.#fail(from, to);
    return value;
  }

  #fail(from: number, to: number): void {
    const text = this.text(from, to);
    this.fault ??= `columns ${from} to ${to} ${text === '' ? 'are blank' : `hold "${text}"`}`;
  }
}

/** Without the sign of a zero. */
function wholeOf(text: string): number {
  return Number(text) || 0;
}

/** Reads one record, whole or not at all. */
export function decoded<T>(line: string, reading: (columns: Columns) => T): Decoded<T> {
  const columns = new Columns(line);
  const value = reading(columns);
  return columns.fault === null ? { ok: true, value } : { ok: false, fault: columns.fault };
}
