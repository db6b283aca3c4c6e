import { wrap180 } from '../units/units.ts';
import { parseAngle } from './angle-text.ts';
import type { DecimalMark } from './parse-number.ts';
import type { Row } from './row.ts';

/** Where the position of a row stands, and how many degrees one unit of it is. */
export interface PositionPlace {
  readonly latIndex: number;
  readonly lonIndex: number;
  readonly latFactor: number;
  readonly lonFactor: number;
  /** Columns of N/S and E/W beside the numbers; null when there are none. */
  readonly latLetterIndex: number | null;
  readonly lonLetterIndex: number | null;
  readonly mark: DecimalMark;
}

/** Reads the position of rows one by one. */
export class PositionReader {
  latDeg = NaN;
  lonDeg = NaN;
  /** Longitudes beyond 180 that were brought to −180 to 180, and the first line of them. */
  wrapped = 0;
  wrappedLine = 0;
  /** Rows whose latitude can be none but whose longitude can be a latitude. */
  swapped = 0;
  swappedLine = 0;
  readonly #place: PositionPlace;

  constructor(place: PositionPlace) {
    this.#place = place;
  }

  /** Reads a row into `latDeg` and `lonDeg`. False when it has no usable position. */
  read(row: Row, line: number): boolean {
    const { latIndex, lonIndex, latFactor, lonFactor, latLetterIndex, lonLetterIndex, mark } = this.#place;
    let latDeg = degrees(row, latIndex, latFactor, mark, 'lat');
    let lonDeg = degrees(row, lonIndex, lonFactor, mark, 'lon');
    if (latLetterIndex !== null && /^\s*s/i.test(row.text(latLetterIndex))) latDeg = -Math.abs(latDeg);
    if (lonLetterIndex !== null && /^\s*w/i.test(row.text(lonLetterIndex))) lonDeg = -Math.abs(lonDeg);
    if (!(latDeg >= -90 && latDeg <= 90)) {
      if (Math.abs(latDeg) <= 360 && Math.abs(lonDeg) <= 90 && this.swapped++ === 0) this.swappedLine = line;
      return false;
    }
    if (!(lonDeg >= -180 && lonDeg <= 360)) return false;
    if (lonDeg >= 180) {
      if (this.wrapped++ === 0) this.wrappedLine = line;
      lonDeg = wrap180(lonDeg);
    }
    this.latDeg = latDeg;
    this.lonDeg = lonDeg;
    return true;
  }
}

function degrees(row: Row, index: number, factor: number, mark: DecimalMark, axis: 'lat' | 'lon'): number {
  const number = row.number(index, mark);
  return Number.isNaN(number) ? parseAngle(row.text(index), axis) : number * factor;
}
