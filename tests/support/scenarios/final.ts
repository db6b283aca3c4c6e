import type { Leg, PilotSkill } from '../flight/cockpit.ts';
import { aboveGlidepath, belowGlidepath, belowIndicated } from '../flight/moments.ts';
import { glidepath, level, rate } from '../flight/sinking.ts';
import { localizer } from '../flight/steering.ts';

/** On the localizer at an altitude until the glidepath comes down to the aircraft; later than 0 is late. */
export function levelToGlidepath(altitudeFt: number, untilFullScale = -0.1, airspeedKt = 95): Leg {
  return {
    name: 'level on the localizer',
    lateral: localizer(),
    vertical: level(altitudeFt),
    airspeedKt,
    until: aboveGlidepath(untilFullScale),
  };
}

/** Kept high and now sinking onto the glidepath from above. */
export function downFromAbove(sinkFpm: number, untilFullScale = 0.15, airspeedKt = 100): Leg {
  return {
    name: 'down to the glidepath from above',
    lateral: localizer(),
    vertical: rate(-sinkFpm),
    airspeedKt,
    until: belowGlidepath(untilFullScale),
  };
}

export interface FinalOptions {
  readonly name?: string;
  readonly airspeedKt?: number;
  readonly flapDeg?: number;
  readonly skill?: Partial<PilotSkill>;
  /** Needles that the pilot flies instead of zero. */
  readonly aimLocalizer?: number;
  readonly aimGlidepath?: number;
}

/** Down both needles to an indicated altitude. */
export function onTheBeam(toFt: number, options: FinalOptions = {}): Leg {
  return {
    name: options.name ?? 'final',
    lateral: localizer(options.aimLocalizer),
    vertical: glidepath(options.aimGlidepath),
    airspeedKt: options.airspeedKt ?? 90,
    flapDeg: options.flapDeg ?? 10,
    ...(options.skill && { skill: options.skill }),
    until: belowIndicated(toFt),
  };
}
