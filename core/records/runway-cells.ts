import type { Position } from '../earth/geodesic.ts';
import { RUNWAY_LENGTH_FT } from '../facility/facility-schema.ts';
import type { Row } from '../log/row.ts';
import type { RunwayColumn, RunwayColumns } from './runway-columns.ts';
import type { RunwayEnd, RunwayRow } from './runway-table.ts';

/** What numbers can be at all; outside of it a cell counts as unreadable. Ours: they catch slips. */
const RANGE = {
  latitude: [-90, 90],
  longitude: [-180, 180],
  elevation: [-1500, 16000],
  heading: [0, 360],
  length: [1, RUNWAY_LENGTH_FT.max],
  width: [1, 10000],
  displaced: [0, RUNWAY_LENGTH_FT.max],
} as const;
type Kind = keyof typeof RANGE;

/** Decimals of a degree beyond which a number is taken for one that was kept in single precision. */
const MOST_DECIMALS = 7;
/** A number of single precision, printed, is this near to itself; degrees. */
const SINGLE_DEG = 1e-9;
const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

/** A row read, and the names of its cells that hold no number that can be. */
export interface ReadRunway {
  readonly row: RunwayRow;
  readonly unreadable: readonly RunwayColumn[];
}

/** Reads one row of the table. Cells that say nothing are null; a position of 0, 0 is none. */
export function readRunway(cells: Row, { at }: RunwayColumns, line: number): ReadRunway {
  const unreadable: RunwayColumn[] = [];
  const text = (column: RunwayColumn) => cells.text(at[column]).trim();
  const number: NumberIn = (column, kind) => {
    if (at[column] === -1 || text(column) === '') return null;
    const value = numberIn(text(column), kind);
    if (value === null) unreadable.push(column);
    return value;
  };
  const [low, high] = [endOf('le', text, number), endOf('he', text, number)];
  const row = {
    line,
    airportIdent: text('airport_ident'),
    lengthFt: number('length_ft', 'length'),
    widthFt: number('width_ft', 'width'),
    surface: at.surface === -1 ? '' : text('surface'),
    halfStepDeg: 0.5 / 10 ** decimalsOf(low, high),
    low,
    high,
  };
  return { row, unreadable };
}

/** Whether a row is of a runway that is closed: 1, or a word for it. */
export function isClosed(cells: Row, { at }: RunwayColumns): boolean {
  return /^(?:1|yes|true)$/i.test(cells.text(at.closed).trim());
}

type NumberIn = (column: RunwayColumn, kind: Kind) => number | null;

function endOf(end: 'le' | 'he', text: (column: RunwayColumn) => string, number: NumberIn): RunwayEnd {
  const latDeg = number(`${end}_latitude_deg`, 'latitude');
  const lonDeg = number(`${end}_longitude_deg`, 'longitude');
  const isPlace = latDeg !== null && lonDeg !== null && (latDeg !== 0 || lonDeg !== 0);
  const position: Position | null = isPlace
    ? { latDeg: asWritten(latDeg), lonDeg: lonDeg === 180 ? -180 : asWritten(lonDeg) }
    : null;
  const displaced = `${end}_displaced_threshold_ft` as const;
  return {
    ident: text(`${end}_ident`),
    position,
    elevationFt: number(`${end}_elevation_ft`, 'elevation'),
    headingTrueDeg: number(`${end}_heading_degT`, 'heading'),
    displacedThresholdFt: text(displaced) === '' ? 0 : number(displaced, 'displaced'),
  };
}

function numberIn(text: string, kind: Kind): number | null {
  const value = PLAIN.test(text) ? Number(text) : NaN;
  const [least, most] = RANGE[kind];
  return value >= least && value <= most ? value : null;
}

/**
 * The number that somebody wrote, of one that the dataset kept in single precision: 31.20009994506836 was 31.2001. Its
 * later digits say nothing, and hide how coarse it is.
 */
function asWritten(deg: number): number {
  if (Number(deg.toFixed(MOST_DECIMALS)) === deg || Math.abs(Math.fround(deg) - deg) > SINGLE_DEG) return deg;
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
    const short = Number(deg.toFixed(decimals));
    if (Math.fround(short) === Math.fround(deg)) return short;
  }
  return deg;
}

/** Decimals that the finest of a row's numbers is written with, since a last 0 is not. */
function decimalsOf(...ends: readonly RunwayEnd[]): number {
  const all = ends.flatMap(({ position }) => (position === null ? [] : [position.latDeg, position.lonDeg]));
  return Math.max(
    0,
    ...all.map(
      (deg) =>
        deg
          .toFixed(MOST_DECIMALS)
          .replace(/\.?0+$/, '')
          .split('.')[1]?.length ?? 0,
    ),
  );
}
