import { glidepathFeetAt } from '../../core/sheet/beam-lines.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';
import { rowAt, valueAtRow, type Row } from '../sheet/rows.ts';

/** One moment of the table behind the sheet; NaN or null where a value is not known or means nothing. */
export interface PathRow {
  readonly timeS: number;
  /** Of the event; null at a half mile. */
  readonly words: string | null;
  readonly distanceNm: number;
  readonly altitudeFt: number;
  readonly indicatedFt: number;
  /** Null past the threshold, where there is no path. */
  readonly aboveFt: number | null;
  /** Fractions of full scale; null below decision altitude, where full scale is a few feet. */
  readonly localizer: number | null;
  readonly glidepath: number | null;
  readonly airspeedKt: number;
  readonly verticalSpeedFpm: number;
}

const EVERY_NM = 0.5;
/** So near to an event, a half mile says nothing that the event does not. */
const NEAR_S = 1;

/** A row at each event of an approach, and at each half mile as often as it was flown over, in the order flown. */
export function pathRows(sheet: Sheet): PathRow[] {
  const events = sheet.events.map((event) => ({
    timeS: event.timeS,
    row: rowAt(sheet.columns, event.timeS),
    event,
  }));
  const isNearEvent = (timeS: number) => events.some((event) => Math.abs(event.timeS - timeS) < NEAR_S);
  const miles = halfMiles(sheet)
    .map((row) => ({ timeS: valueAtRow(sheet.columns.timeS, row), row, event: null }))
    .filter(({ timeS }) => !isNearEvent(timeS));
  return [...events, ...miles]
    .toSorted((a, b) => a.timeS - b.timeS)
    .map(({ timeS, row, event }) => {
      const flown = rowOf(sheet, timeS, row);
      return event ? { ...flown, ...toldOf(event) } : flown;
    });
}

/** Where the flown line crosses a half mile; nothing is crossed in a gap. */
function halfMiles({ columns, span }: Sheet): Row[] {
  const { distanceNm, timeS, gapBefore } = columns;
  const rows: Row[] = [];
  for (let i = 1; i < distanceNm.length; i++) {
    const [from, to] = [distanceNm[i - 1]! / EVERY_NM, distanceNm[i]! / EVERY_NM];
    if (gapBefore[i] === 1 || from === to) continue;
    const crossed = [];
    for (let k = Math.ceil(Math.min(from, to)); k <= Math.max(from, to); k++)
      // The fix that lies on it belongs to the interval before it.
      if (k !== from) crossed.push(i - 1 + (k - from) / (to - from));
    rows.push(...crossed.sort((a, b) => a - b));
  }
  return rows.filter((row) => {
    const s = valueAtRow(timeS, row);
    return s >= span.startS && s <= span.endS;
  });
}

function rowOf({ columns, beam, needlesUntilS }: Sheet, timeS: number, row: Row): PathRow {
  const at = (column: Float64Array | null) => (column ? valueAtRow(column, row) : NaN);
  const distanceNm = at(columns.distanceNm);
  const isBelow = needlesUntilS !== null && timeS > needlesUntilS;
  const needle = (column: Float64Array) => (isBelow ? null : known(at(column)));
  return {
    timeS,
    words: null,
    distanceNm,
    altitudeFt: at(columns.altitudeFt),
    indicatedFt: at(columns.indicatedFt),
    aboveFt:
      distanceNm < 0
        ? null
        : known(glidepathFeetAt(beam, at(columns.glidepathAlongFt), at(columns.glidepath))),
    localizer: needle(columns.localizer),
    glidepath: needle(columns.glidepath),
    airspeedKt: at(columns.airspeedKt),
    verticalSpeedFpm: at(columns.verticalSpeedFpm),
  };
}

/** What the debrief tells of an event, as it tells it: the same moment has the same numbers on one page. */
function toldOf({ words, told }: Sheet['events'][number]): Partial<PathRow> {
  const { localizerFullScale: localizer, glidepathFullScale: glidepath, airspeedKt, verticalSpeedFpm } = told;
  return {
    words,
    localizer,
    glidepath,
    ...(airspeedKt !== null && { airspeedKt }),
    ...(verticalSpeedFpm !== null && { verticalSpeedFpm }),
    ...(told.altitudeFt !== null &&
      (told.altitudeSource === 'indicated'
        ? { indicatedFt: told.altitudeFt }
        : { altitudeFt: told.altitudeFt })),
  };
}

function known(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}
