import { issue, type Issue, type Severity } from '../issue/issue.ts';
import { nearestKey } from '../json/nearest-key.ts';
import type { Row } from '../log/row.ts';
import type { RowTaker } from '../log/row-splitter.ts';
import { whole } from '../units/whole.ts';
import { isClosed, readRunway } from './runway-cells.ts';
import type { RunwayColumns } from './runway-columns.ts';
import type { RunwayRow, RunwayTable } from './runway-table.ts';

/** The dataset holds 45,000 airports, the longest field a handful of runways: an odd file must not fill the memory. */
const AIRPORTS_MAX = 200_000;
const RUNWAYS_MAX = 100;
const IDENT_MAX_CHARS = 20;

/** What may be wrong with rows: how severe, and in words after their number. */
const FAULTS = {
  'runway-closed': ['note', 'runway is closed and left out', 'runways are closed and left out'],
  'runway-without-position': [
    'caution',
    'runway has no position of either end and is left out',
    'runways have no position of either end and are left out',
  ],
  'runway-value-unreadable': [
    'caution',
    'runway holds a value that cannot be: it counts as not known',
    'runways hold values that cannot be: they count as not known',
  ],
  'runway-row-too-short': [
    'caution',
    'row has too few cells and is left out',
    'rows have too few cells and are left out',
  ],
  'runway-quote-unclosed': [
    'caution',
    'row has a quote that is never closed and is left out',
    'rows have quotes that are never closed and are left out',
  ],
  'runways-too-many': [
    'warning',
    `runway beyond the first ${RUNWAYS_MAX} of the airport is left out`,
    `runways beyond the first ${RUNWAYS_MAX} of the airport are left out`,
  ],
} as const satisfies Readonly<Record<string, readonly [Severity, one: string, many: string]>>;
type Fault = keyof typeof FAULTS;

/** Takes the rows of a table one by one and keeps those of one airport. */
export class RunwayRows implements RowTaker {
  readonly #columns: RunwayColumns;
  readonly #asked: string | null;
  readonly #airports = new Map<string, string>();
  readonly #runways: RunwayRow[] = [];
  readonly #faults = new Map<Fault, { count: number; firstLine: number }>();
  #rowsSeen = 0;
  #rowsOfAsked = 0;

  /** @param asked ident of the airport whose rows are kept, in any case; null for none */
  constructor(columns: RunwayColumns, asked: string | null) {
    this.#columns = columns;
    this.#asked = asked === null ? null : keyOf(asked).slice(0, IDENT_MAX_CHARS);
  }

  row(cells: Row, line: number): void {
    if (cells.length === 1 && cells.text(0).trim() === '') return;
    this.#rowsSeen++;
    if (cells.length < this.#columns.cellsNeeded) return this.#fault('runway-row-too-short', line);
    const airport = cells.text(this.#columns.at.airport_ident).trim().slice(0, IDENT_MAX_CHARS);
    const isAsked = this.#asked === null || keyOf(airport) === this.#asked;
    if (isAsked) this.#rowsOfAsked++;
    if (isClosed(cells, this.#columns)) return isAsked ? this.#fault('runway-closed', line) : undefined;
    const { row, unreadable } = readRunway(cells, this.#columns, line);
    if (isAsked && unreadable.length > 0) this.#fault('runway-value-unreadable', line);
    if (row.low.position === null && row.high.position === null)
      return isAsked ? this.#fault('runway-without-position', line) : undefined;
    if (this.#airports.size < AIRPORTS_MAX) this.#airports.set(keyOf(airport), airport);
    if (this.#asked !== null && isAsked) this.#keep(row);
  }

  unclosedQuote(line: number): void {
    this.#rowsSeen++;
    this.#fault('runway-quote-unclosed', line);
  }

  table(): RunwayTable {
    return { rowsSeen: this.#rowsSeen, airports: [...this.#airports.values()], runways: this.#runways };
  }

  issues(): Issue[] {
    const faults = [...this.#faults].map(([code, { count, firstLine }]) => {
      const [severity, one, many] = FAULTS[code];
      const message = count === 1 ? `1 ${one}.` : `${whole(count)} ${many}.`;
      return issue(severity, code, message, { count, firstLine });
    });
    return this.#asked !== null && this.#rowsOfAsked === 0 ? [this.#unknownAirport(), ...faults] : faults;
  }

  #keep(row: RunwayRow): void {
    if (this.#runways.length < RUNWAYS_MAX) this.#runways.push(row);
    else this.#fault('runways-too-many', row.line);
  }

  #fault(code: Fault, line: number): void {
    const known = this.#faults.get(code);
    this.#faults.set(code, { count: (known?.count ?? 0) + 1, firstLine: known?.firstLine ?? line });
  }

  #unknownAirport(): Issue {
    const nearest = nearestKey(this.#asked!, [...this.#airports.values()]);
    const tip =
      nearest === null ? 'Airports stand under their ICAO code, or a local one.' : `Is it ${nearest}?`;
    return issue('warning', 'runways-no-such-airport', `The table has no airport ${this.#asked!}.`, { tip });
  }
}

/** Idents are the same in capitals and without. */
function keyOf(ident: string): string {
  return ident.trim().toUpperCase();
}
