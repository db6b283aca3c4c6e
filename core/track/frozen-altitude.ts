import { issue, type Issue } from '../issue/issue.ts';
import type { Log, Quantity } from '../log/log.ts';
import { QUANTITY_RULES } from '../log/quantity-rules.ts';
import { whole } from '../units/whole.ts';
import { stepKt } from './quality.ts';
import type { Track } from './track.ts';

/** For less than this an altimeter may stand still, in its own steps or those of the log (ours). */
const LEAST_S = 60;
/** In longer the weather, or a new setting, may move one height against another in level flight (ours). */
const MOST_S = 600;
/** So much another height does not change in level flight (ours). */
const LEAST_CHANGE_FT = 300;
/** Of the values to either end: a few that are wrong say nothing against an altimeter. */
const OUTERMOST = 0.05;
/** "The same to the foot". */
const SAME_FT = 0.5;
/** Slower than this nothing flies: while it is parked, heights of a receiver that has just woken may wander. */
const SLOW_KT = 40;

/** The heights that tell whether another one is stuck. */
const OTHERS: readonly Quantity[] = [
  'altitudeGeometricFt',
  'altitudeEllipsoidFt',
  'altitudeUnnamedFt',
  'altitudePressureFt',
  'altitudeTransponderFt',
];

type Fixes = Pick<Track, 'timeS' | 'latDeg' | 'lonDeg' | 'line'>;

/** The first and the last fix of a run. */
type Run = readonly [first: number, last: number];

/**
 * Says when an indicated altitude is stuck: the same to the foot for 60 s or more, while another recorded height
 * changes by 300 ft or more in flight. Null where it is not. `take` cuts a column of the log to the fixes.
 */
export function frozenAltitude(
  fixes: Fixes,
  indicatedFt: Float64Array,
  { values }: Pick<Log, 'values'>,
  take: (values: Float64Array) => Float64Array,
): Issue | null {
  const runs = stillRuns(fixes, indicatedFt);
  if (runs.length === 0) return null;
  const others = OTHERS.flatMap((quantity) => {
    const logged = values[quantity];
    return logged ? [{ quantity, heightFt: take(logged) }] : [];
  });
  for (const run of runs)
    for (const { quantity, heightFt } of others) {
      const changeFt = changeOf(fixes, heightFt, run);
      if (changeFt >= LEAST_CHANGE_FT) return frozen(fixes, indicatedFt, run, { quantity, changeFt });
    }
  return null;
}

/** Where a height stays the same for long enough, in parts of 10 minutes; missing values part nothing, unless for as long. */
function stillRuns({ timeS }: Fixes, heightFt: Float64Array): Run[] {
  const runs: Run[] = [];
  let [first, last] = [0, 0];
  const close = () => {
    if (timeS[last]! - timeS[first]! >= LEAST_S) runs.push([first, last]);
  };
  for (let i = 1; i < heightFt.length; i++) {
    if (Number.isNaN(heightFt[i]!)) continue;
    const isSame =
      Math.abs(heightFt[i]! - heightFt[first]!) < SAME_FT &&
      timeS[i]! - timeS[last]! <= LEAST_S &&
      timeS[i]! - timeS[first]! <= MOST_S;
    if (!isSame) {
      close();
      first = i;
    }
    last = i;
  }
  close();
  return runs;
}

/** How far another height changes over a run, in flight; the outermost of its values, which may be wrong, do not count. */
function changeOf(fixes: Fixes, heightFt: Float64Array, [first, last]: Run): number {
  const flownFt = new Float64Array(last - first);
  let count = 0;
  for (let i = first + 1; i <= last; i++)
    if (!Number.isNaN(heightFt[i]!) && stepKt(fixes, i - 1, i) >= SLOW_KT) flownFt[count++] = heightFt[i]!;
  if (count === 0) return 0;
  const sorted = flownFt.subarray(0, count).sort();
  const outermost = Math.ceil(OUTERMOST * (count - 1));
  return Math.max(0, sorted[count - 1 - outermost]! - sorted[outermost]!);
}

function frozen(
  { timeS, line }: Fixes,
  indicatedFt: Float64Array,
  [first, last]: Run,
  { quantity, changeFt }: { readonly quantity: Quantity; readonly changeFt: number },
): Issue {
  const seconds = whole(timeS[last]! - timeS[first]!);
  const message =
    `The indicated altitude stands at ${whole(indicatedFt[first]!)} ft for ${seconds} s, while the ` +
    `${QUANTITY_RULES[quantity].label} changes by ${whole(changeFt)} ft: it is stuck, and counts as not recorded throughout.`;
  return issue('warning', 'altitude-frozen', message, {
    count: last - first + 1,
    firstLine: line[first]!,
    tip: 'Was it the altimeter, or the recorder? Gates and decision altitude go by the height that is left.',
  });
}
