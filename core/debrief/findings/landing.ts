import { momentOf } from '../../approach/flown-approach.ts';
import { threshold, type FindingRule } from './rule.ts';
import { feet } from './say.ts';

const LONG = {
  zone: threshold(
    3000,
    'ft past the threshold, or half of a shorter runway',
    'the touchdown zone (FAA AC 91-79B, from memory); the half is ours',
  ),
  error: threshold(350, 'ft', 'a touchdown is found within 3 s of the wheels at 65 kt (measured)'),
};

/** Beyond the touchdown zone. */
export const LONG_LANDING: FindingRule = {
  id: 'long-landing',
  kind: 'fault',
  title: 'Landed long',
  thresholds: LONG,
  stoodOff: null,
  byHand: false,
  coveredBy: [],
  find: ({ sitting, measures }) => {
    const touchdownS = momentOf(sitting.approach, 'touchdown');
    const pastFt = measures.touchdownDistanceFt;
    if (touchdownS === null || pastFt === null) return null;
    const { lengthFt } = sitting.flown.facility;
    if (pastFt - LONG.error.value < Math.min(LONG.zone.value, lengthFt / 2)) return null;
    return { startS: touchdownS, endS: touchdownS, evidence: { pastFt, leftFt: lengthFt - pastFt } };
  },
  text: ({ pastFt, leftFt }) =>
    `You touched down about ${feet(pastFt!)} past the threshold, with ${feet(leftFt!)} of runway left. Past the touchdown zone a landing that floats is a ` +
    'go-around.',
  practise:
    'Pick the point of touchdown before the flare and a point at which you will go around, and say both on final; cross the threshold ' +
    'at the landing speed.',
};
