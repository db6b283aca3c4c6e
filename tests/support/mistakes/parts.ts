import type { Leg, PilotSkill } from '../flight/cockpit.ts';
import { onTheBeam } from '../scenarios/final.ts';
import { FINAL_KT, type PracticeFlight } from './practice-flight.ts';

type Ending = Pick<PracticeFlight, 'ending' | 'stated'>;
const stated = { conditions: 'simulated', targetAirspeedKt: FINAL_KT } as const;
export const landed: Ending = { ending: 'landed', stated: { ...stated, visualReferenceAtMinimums: 'seen' } };
export const missed: Ending = {
  ending: 'missed-approach',
  stated: { ...stated, visualReferenceAtMinimums: 'not-seen' },
};

/** A leg on both needles until some height, with what is wrong about it. */
export function beamTo(toFt: number, wrong: Partial<Leg> = {}): Leg {
  return { ...onTheBeam(toFt, { airspeedKt: FINAL_KT }), ...wrong };
}

/** Comes back without a large cut, where a mistake that is not about that is over. */
export const gentle = (largestCutDeg: number): Partial<Leg> => ({
  skill: { cutDegPerScale: 8, largestCutDeg, learnDegPerS: 0.02 },
});

/** Sees a needle late and never rests. */
export const HUNTER: Partial<PilotSkill> = { lateS: 3.5, scanS: 0.5, ignoredFullScale: 0.02, planned: 1 };
