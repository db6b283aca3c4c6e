import { CalendarTimes } from './calendar-times.ts';
import { FixTable } from './fix-table.ts';
import type { GpxElement } from './gpx-elements.ts';
import type { XmlTaker } from './guarded-xml.ts';
import { PositionReader } from './position-reader.ts';
import type { RowFaults } from './row-faults.ts';
import { Row } from './row.ts';
import { ValueReader } from './value-reader.ts';

/** A point is read as a row: latitude, longitude, then its elements. */
const FIRST_VALUE = 2;

/** Takes the elements of a GPX file and puts its track points with a time and a position into a table. */
export class GpxFixes implements XmlTaker {
  /** Name of the outermost element; '' before it. */
  root = '';
  /** Track points, also those left out. */
  pointsSeen = 0;
  /** Points of routes and waypoints, which have no track. */
  otherPoints = 0;
  readonly times: CalendarTimes;
  readonly position = new PositionReader({
    latIndex: 0,
    lonIndex: 1,
    latFactor: 1,
    lonFactor: 1,
    latLetterIndex: null,
    lonLetterIndex: null,
    mark: '.',
  });
  readonly table: FixTable;
  readonly readers: readonly ValueReader[];
  /** Elements that were met inside a track point, whether read or not. */
  readonly met = new Set<string>();
  readonly #faults: RowFaults;
  readonly #places: ReadonlyMap<string, number>;
  /** The point that is being read: its line, its attributes, its elements' texts by place; null outside points. */
  #point: {
    line: number;
    lat: string;
    lon: string;
    time: string;
    fix: string;
    texts: string[];
  } | null = null;
  #text = '';
  readonly #row = new Row();

  /** @param expectedPoints how many track points are likely to come; 0 when nobody knows */
  constructor(elements: readonly GpxElement[], faults: RowFaults, expectedPoints: number) {
    this.times = new CalendarTimes(expectedPoints);
    this.#faults = faults;
    this.table = new FixTable(
      ['latDeg', 'lonDeg', ...elements.map((element) => element.quantity)],
      expectedPoints,
    );
    this.readers = elements.map(
      ({ header, quantity, unit }, index) =>
        new ValueReader(
          { index: index + FIRST_VALUE, header },
          quantity,
          unit,
          '.',
          this.table.column(quantity),
        ),
    );
    this.#places = new Map(elements.flatMap((element, index) => element.names.map((name) => [name, index])));
  }

  open(name: string, attributes: Readonly<Record<string, string>>, line: number): void {
    if (this.root === '') this.root = name;
    this.#text = '';
    if (name === 'trkseg') this.table.breakHere();
    else if (name === 'rtept' || name === 'wpt') this.otherPoints++;
    else if (name === 'trkpt') {
      this.#point = {
        line,
        lat: attributes['lat'] ?? '',
        lon: attributes['lon'] ?? '',
        time: '',
        fix: '',
        texts: this.readers.map(() => ''),
      };
    }
  }

  text(text: string): void {
    if (this.#point !== null) this.#text += text;
  }

  close(name: string): void {
    const point = this.#point;
    if (point === null) return;
    if (name === 'trkpt') this.#endPoint();
    else if (name === 'time') point.time ||= this.#text;
    else if (name === 'fix') point.fix = this.#text.trim();
    else {
      const word = name.toLowerCase();
      const place = this.#places.get(word);
      if (this.#text.trim() !== '') this.met.add(word);
      if (place !== undefined) point.texts[place] ||= this.#text;
    }
    this.#text = '';
  }

  #endPoint(): void {
    const { line, lat, lon, time, fix, texts } = this.#point!;
    this.#point = null;
    this.pointsSeen++;
    const height = this.#places.get('ele');
    const isFlat = fix === '2d' && height !== undefined && texts[height] !== '';
    if (isFlat) texts[height] = '';
    this.#row.take([lat, lon, ...texts]);
    // "none" says that the receiver had no fix: such a point is no place where the aircraft was.
    if (fix === 'none' || !this.position.read(this.#row, line))
      this.#faults.add('row-without-position', line);
    else if (!this.times.addMoment(time, NaN)) this.#faults.add('row-without-time', line);
    else {
      if (isFlat) this.#faults.add('height-of-2d-fix', line);
      this.table.column('latDeg').push(this.position.latDeg);
      this.table.column('lonDeg').push(this.position.lonDeg);
      for (const reader of this.readers) reader.read(this.#row, line);
      this.table.endRow(line);
    }
  }
}
