import type { FlownApproach } from '../../../core/approach/flown-approach.ts';
import type { TrueApproach, TrueNeedle } from '../../support/truth/true-approach.ts';
import { needleOver, type Found } from './found-in.ts';

/** How far the program may be from the truth. */
export interface Tolerances {
  readonly eventS: number;
  /** Of a glidepath-intercept, which is looked for at the fixes. */
  readonly interceptS: number;
  /** Of a touchdown from that of the wheels, unless they floated so long within 3 ft of the runway. */
  readonly wheelsS: number;
  readonly rms: number;
  /** Of time outside, whichever of the two is more. */
  readonly outsideS: number;
  readonly outsideShare: number;
}

const ROUNDING_S = 0.001;
const FAR_OFF_SCALE = 5;
const OFF_SCALE_SHARE = 0.03;

/** Every difference between what was found and what is true, in a sentence each. */
export function differences(found: Found, truth: readonly TrueApproach[], tolerances: Tolerances): string[] {
  const list = (all: readonly { kind: string; outcome: string }[]): string =>
    all.map(({ kind, outcome }) => `${kind} ${outcome}`).join(', ') || 'nothing';
  if (list(found.approaches) !== list(truth))
    return [`found ${list(found.approaches)}; truly ${list(truth)}`];
  return found.approaches.flatMap((approach, i) => [
    ...eventDifferences(approach, truth[i]!, tolerances),
    ...crossedTwice(approach),
    ...finalDifferences(found, approach, truth[i]!, tolerances),
  ]);
}

function eventDifferences(approach: FlownApproach, truth: TrueApproach, tolerances: Tolerances): string[] {
  const kinds = new Set([...approach.events, ...truth.events].map(({ kind }) => kind));
  return [...kinds].flatMap((kind) => {
    const found = approach.events.filter((event) => event.kind === kind);
    const likely = truth.events.filter((event) => event.kind === kind);
    const true_ = found.length === 0 ? likely.filter(({ doubtful }) => !doubtful) : likely;
    if (found.length !== true_.length)
      return [`${kind}: ${found.length} found (${times(found)}), ${true_.length} truly (${times(true_)})`];
    const limitS = kind === 'glidepath-intercept' ? tolerances.interceptS : tolerances.eventS;
    return true_.flatMap(({ timeS, from, betweenS, wheelsS }, k) => {
      const offS = outsideS(found[k]!.timeS, betweenS ?? { fromS: timeS, toS: timeS });
      const wrong =
        Math.abs(offS) > limitS + ROUNDING_S
          ? [`${kind}: ${offS.toFixed(2)} s late (truly ${times([true_[k]!])})`]
          : [];
      const remark =
        from !== null && from !== 'either' && found[k]!.remark !== `from-${from}`
          ? [`${kind}: truly from ${from}`]
          : [];
      const floated = wheelsS === undefined || wheelsS - timeS > tolerances.wheelsS - tolerances.eventS;
      const wheels = floated ? [] : off('wheels down', found[k]!.timeS, wheelsS, tolerances.wheelsS);
      return [...wrong, ...remark, ...wheels];
    });
  });
}

/** Where a hair decides how the threshold was crossed, either is right, and both are not. */
function crossedTwice({ events }: FlownApproach): string[] {
  const crossings = events.filter(({ kind }) => kind === 'threshold' || kind === 'abeam-threshold');
  return crossings.length > 1 ? [`crossed the threshold ${crossings.length} times`] : [];
}

/** Seconds after a span, negative before it, 0 within. */
function outsideS(timeS: number, { fromS, toS }: { fromS: number; toS: number }): number {
  return Math.max(0, timeS - toS) + Math.min(0, timeS - fromS);
}

/** The limits of final, and both needles over the true one: a second at its end is for the events to tell. */
function finalDifferences(
  found: Found,
  approach: FlownApproach,
  truth: TrueApproach,
  tolerances: Tolerances,
): string[] {
  const { final, localizer, glidepath } = truth;
  const has = approach.segments.find(({ kind }) => kind === 'final');
  const fix = truth.events.find(({ kind }) => kind === 'final-approach-fix');
  if (!has && fix?.doubtful) return [];
  if (!has || final === null) return !has && final === null ? [] : [`final: ${has ? 'found' : 'not found'}`];
  return [
    ...off('final start', has.startS, final.startS, tolerances.eventS + ROUNDING_S),
    ...off('final end', outsideS(has.endS, final.endBetweenS), 0, tolerances.eventS + ROUNDING_S),
    ...needleDifferences('localizer', needleOver(found, 'localizerFullScale', final), localizer!, tolerances),
    ...needleDifferences('glidepath', needleOver(found, 'glidepathFullScale', final), glidepath!, tolerances),
  ];
}

function needleDifferences(
  name: string,
  has: TrueNeedle,
  truth: TrueNeedle,
  { rms, outsideS, outsideShare }: Tolerances,
): string[] {
  // Where its scale is a few feet wide, as the glidepath's is over the threshold, a needle goes by many scales in a
  // second, and no line between two fixes is its way: it is compared by a share of it.
  const near = truth.largest <= FAR_OFF_SCALE ? rms : Math.max(rms, OFF_SCALE_SHARE * truth.rms);
  return [
    ...off(`${name} mean`, has.mean, truth.mean, near),
    ...off(`${name} rms`, has.rms, truth.rms, near),
    ...off(
      `${name} largest`,
      has.largest,
      truth.largest,
      Math.max(3 * rms, (truth.largest > FAR_OFF_SCALE ? 0.1 : 0.03) * truth.largest),
    ),
    ...off(
      `${name} time outside`,
      has.outsideS,
      truth.outsideS,
      Math.max(outsideS, outsideShare * truth.outsideS),
    ),
  ];
}

function off(name: string, has: number, true_: number, limit: number): string[] {
  return Math.abs(has - true_) > limit ? [`${name}: ${has.toFixed(3)}, truly ${true_.toFixed(3)}`] : [];
}

function times(events: readonly { timeS: number }[]): string {
  return events.map(({ timeS }) => new Date(Math.round(timeS * 1000)).toISOString().slice(11, 21)).join(' ');
}
