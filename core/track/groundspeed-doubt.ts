import { issue, type Issue } from '../issue/issue.ts';
import type { Log, Quantity } from '../log/log.ts';
import { median } from '../numeric/median.ts';
import type { Track } from './track.ts';

/** Slower than this an aircraft may stand, and its positions tell no speed. Ours, as the next. */
const MOVING_KT = 30;
/** A receiver's groundspeed is within a knot or two, and positions over 5 s within a few: so far off is another thing. */
const OFF_KT = 8;
/** Fewer fixes in motion tell nothing of a whole log. */
const LEAST_FIXES = 30;

const AIRSPEEDS = ['airspeedIndicatedKt', 'airspeedTrueKt'] as const;

/**
 * Says where the recorded groundspeed is off that of the positions over most of the log, and a column of airspeed is
 * nearer: the two were exchanged, most likely. A groundspeed with a named unit is believed otherwise.
 *
 * @param byPositionsKt the groundspeed by the positions, as long as the recorded columns
 */
export function groundspeedDoubt(
  log: Log,
  recorded: Track['recorded'],
  byPositionsKt: Float64Array,
): readonly Issue[] {
  const { groundspeedKt } = recorded;
  if (!groundspeedKt || isMostlyNear(groundspeedKt, byPositionsKt)) return [];
  const offKt = offBy(groundspeedKt, byPositionsKt);
  if (offKt === null || offKt <= OFF_KT) return [];
  for (const airspeed of AIRSPEEDS) {
    const airspeedKt = recorded[airspeed];
    const airspeedOffKt = airspeedKt ? offBy(airspeedKt, byPositionsKt) : null;
    if (airspeedOffKt !== null && airspeedOffKt < offKt)
      return [exchanged(log, airspeed, offKt, airspeedOffKt)];
  }
  return [];
}

/** Whether the middle of what it is off by is none to speak of: then nothing has to be sorted, as for nearly every log. */
function isMostlyNear(speedKt: Float64Array, byPositionsKt: Float64Array): boolean {
  let near = 0;
  let far = 0;
  for (let i = 0; i < speedKt.length; i++) {
    if (!(byPositionsKt[i]! >= MOVING_KT)) continue;
    const offKt = Math.abs(speedKt[i]! - byPositionsKt[i]!);
    if (offKt <= OFF_KT) near++;
    else if (offKt > OFF_KT) far++;
  }
  return near > far;
}

/** The middle of what a speed is off that of the positions by, in motion; null where too little of it is known. */
function offBy(speedKt: Float64Array, byPositionsKt: Float64Array): number | null {
  const offKt = new Float64Array(speedKt.length);
  let count = 0;
  for (let i = 0; i < speedKt.length; i++) {
    const isKnown = byPositionsKt[i]! >= MOVING_KT && !Number.isNaN(speedKt[i]!);
    if (isKnown) offKt[count++] = Math.abs(speedKt[i]! - byPositionsKt[i]!);
  }
  return count < LEAST_FIXES ? null : median(offKt.subarray(0, count));
}

function exchanged(
  { columns }: Log,
  airspeed: (typeof AIRSPEEDS)[number],
  offKt: number,
  airspeedOffKt: number,
): Issue {
  const headerOf = (quantity: Quantity) => columns.find(({ role }) => role === quantity)?.header ?? quantity;
  const [ground, air] = [headerOf('groundspeedKt'), headerOf(airspeed)];
  return issue(
    'warning',
    'groundspeed-contradicted',
    `Column "${ground}" (groundspeed) is off the speed by the positions by ${Math.round(offKt)} kt all along (median), ` +
      `and column "${air}" (airspeed) by ${Math.round(airspeedOffKt)} kt: are the two exchanged?`,
    {
      tip:
        `If so, say it with --column "${ground}=${airspeed}" --column "${air}=groundspeedKt", ` +
        'or in the app under "What was recognised".',
    },
  );
}
