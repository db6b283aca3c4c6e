import type { Capture } from './established.ts';
import { THRESHOLD_CROSSING_BELOW_FT } from './on-ground.ts';
import type { ApproachEvent, EventKind, UnseenPassage } from './flown-approach.ts';
import type { GlidepathIntercept } from './glidepath-intercept.ts';
import type { Ending } from './outcome.ts';

/** The moments found in one approach; null where there is none. */
export interface Moments {
  readonly aliveS: number;
  readonly capture: Capture;
  readonly glidepathAliveS: number | null;
  readonly intercept: GlidepathIntercept | null;
  readonly fixS: number | null;
  readonly fixAssumed: boolean;
  readonly gates: readonly {
    readonly kind: 'gate-1000' | 'gate-500';
    readonly timeS: number;
    readonly altitudeFt: number;
  }[];
  readonly decision: {
    readonly timeS: number;
    readonly altitudeFt: number;
    readonly assumed: boolean;
  } | null;
  /** Gates and decision altitude that were passed within a gap. */
  readonly unseen: readonly UnseenPassage[];
  readonly missedStartS: number | null;
  readonly ending: Ending;
}

/** The events of an approach in the order of time, none later than its end. */
export function approachEvents(moments: Moments, endS: number): ApproachEvent[] {
  const { capture, intercept, decision, ending } = moments;
  const events: (ApproachEvent | null)[] = [
    event('localizer-alive', moments.aliveS),
    event('localizer-established', capture.establishedS),
    ...capture.lostS.map((timeS) => event('localizer-lost', timeS)),
    ...capture.reEstablishedS.map((timeS) => event('localizer-re-established', timeS)),
    event('glidepath-alive', moments.glidepathAliveS),
    event('glidepath-intercept', intercept?.timeS ?? null, intercept?.from ? `from-${intercept.from}` : null),
    event('final-approach-fix', moments.fixS, moments.fixAssumed ? 'assumed' : null),
    ...moments.gates.map(({ kind, timeS, altitudeFt }) => event(kind, timeS, null, altitudeFt)),
    event(
      'decision-altitude',
      decision?.timeS ?? null,
      decision?.assumed ? 'assumed' : null,
      decision?.altitudeFt,
    ),
    event('missed-approach-start', moments.missedStartS),
    event('lowest-point', moments.missedStartS === null ? null : ending.climb!.lowestS),
    passageEvent(ending),
    event('touchdown', ending.landing?.touchdownS ?? null, ending.landing?.estimated ? 'estimated' : null),
  ];
  return events
    .filter((found) => found !== null)
    .filter(({ timeS }) => timeS <= endS)
    .sort((a, b) => a.timeS - b.timeS);
}

function event(
  kind: EventKind,
  timeS: number | null,
  remark: ApproachEvent['remark'] = null,
  heightCrossedFt: number | null = null,
): ApproachEvent | null {
  return timeS === null ? null : { kind, timeS, remark, heightCrossedFt };
}

function passageEvent({ passage, landing }: Ending): ApproachEvent | null {
  if (!passage) return null;
  const { heightFt } = passage;
  // Who landed was low, whatever was not recorded.
  const isLow = Number.isNaN(heightFt) ? landing !== null : heightFt < THRESHOLD_CROSSING_BELOW_FT;
  return event(isLow ? 'threshold' : 'abeam-threshold', passage.timeS);
}
