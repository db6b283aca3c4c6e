import type { FlownApproach } from '../../../core/approach/flown-approach.ts';
import type { TrueApproach, TrueEvent, TrueNeedle } from '../../support/truth/true-approach.ts';
import { needleOnFinal, type Found } from './found-in.ts';

/** How far the program may be from the truth. */
export interface Tolerances {
  readonly eventS: number;
  /** For the start of a missed approach, which is told by fits over 6 s, of as many fixes as the log has. */
  readonly fittedS: number;
  /** For moments that a log can only tell roughly: the wheels on the ground, and the catching of the glidepath. */
  readonly roughEventS: number;
  readonly rms: number;
  /** Of time outside, whichever of the two is more. */
  readonly outsideS: number;
  readonly outsideShare: number;
}

const ROUGH = new Set<TrueEvent['kind']>(['touchdown', 'glidepath-intercept']);
const ROUNDING_S = 0.001;

/** Every difference between what was found and what is true, in a sentence each. */
export function differences(found: Found, truth: readonly TrueApproach[], tolerances: Tolerances): string[] {
  const list = (all: readonly { kind: string; outcome: string }[]): string =>
    all.map(({ kind, outcome }) => `${kind} ${outcome}`).join(', ') || 'nothing';
  if (list(found.approaches) !== list(truth))
    return [`found ${list(found.approaches)}; truly ${list(truth)}`];
  return found.approaches.flatMap((approach, i) => [
    ...eventDifferences(approach, truth[i]!, tolerances),
    ...needleDifferences(found, approach, truth[i]!, tolerances),
  ]);
}

function eventDifferences(approach: FlownApproach, truth: TrueApproach, tolerances: Tolerances): string[] {
  const kinds = new Set([...approach.events, ...truth.events].map(({ kind }) => kind));
  return [...kinds].flatMap((kind) => {
    const found = approach.events.filter((event) => event.kind === kind);
    const true_ = truth.events.filter((event) => event.kind === kind);
    if (found.length !== true_.length)
      return [`${kind}: ${found.length} found (${times(found)}), ${true_.length} truly (${times(true_)})`];
    const limitS = limitOf(kind, tolerances);
    return true_.flatMap(({ timeS, from, lowS }, k) => {
      const offS = outsideS(found[k]!.timeS, lowS ?? { fromS: timeS, toS: timeS });
      const wrong =
        Math.abs(offS) > limitS + ROUNDING_S
          ? [`${kind}: ${offS.toFixed(2)} s late (truly ${times([true_[k]!])})`]
          : [];
      const remark =
        from !== null && found[k]!.remark !== `from-${from}` ? [`${kind}: truly from ${from}`] : [];
      return [...wrong, ...remark];
    });
  });
}

function limitOf(kind: TrueEvent['kind'], { eventS, fittedS, roughEventS }: Tolerances): number {
  if (kind === 'missed-approach-start') return fittedS;
  return ROUGH.has(kind) ? roughEventS : eventS;
}

/** Seconds after a span, negative before it, 0 within. */
function outsideS(timeS: number, { fromS, toS }: { fromS: number; toS: number }): number {
  return Math.max(0, timeS - toS) + Math.min(0, timeS - fromS);
}

function needleDifferences(
  found: Found,
  approach: FlownApproach,
  truth: TrueApproach,
  tolerances: Tolerances,
): string[] {
  const needle = (name: 'localizer' | 'glidepath', true_: TrueNeedle | null): string[] => {
    const has = needleOnFinal(found, approach, `${name}FullScale`);
    if (has === null || true_ === null)
      return has === true_ ? [] : [`${name}: final ${has ? 'found' : 'not found'}`];
    const limitS = Math.max(tolerances.outsideS, tolerances.outsideShare * true_.outsideS);
    return [
      ...off(`${name} mean`, has.mean, true_.mean, tolerances.rms),
      ...off(`${name} rms`, has.rms, true_.rms, tolerances.rms),
      ...off(`${name} time outside`, has.outsideS, true_.outsideS, limitS),
    ];
  };
  return [...needle('localizer', truth.localizer), ...needle('glidepath', truth.glidepath)];
}

function off(name: string, has: number, true_: number, limit: number): string[] {
  return Math.abs(has - true_) > limit ? [`${name}: ${has.toFixed(3)}, truly ${true_.toFixed(3)}`] : [];
}

function times(events: readonly { timeS: number }[]): string {
  return events.map(({ timeS }) => new Date(Math.round(timeS * 1000)).toISOString().slice(11, 21)).join(' ');
}
