import type { WholeMeasures } from '../approach/whole-measures.ts';
import { utcText } from '../units/utc.ts';
import type { DebriefMeasures } from './debrief.ts';
import { unknownOf } from './known.ts';

const NO_FINAL = 'Final was not flown, or nothing of it was recorded.';

/** The measures of an approach as a whole, as the answer holds them. */
export function measuresDebrief(measures: WholeMeasures): DebriefMeasures {
  const { corrections, sink, wind, threshold, touchdownDistanceFt, heightLostFt } = measures;
  const values = {
    correctionsOnFinal: corrections && {
      ...corrections,
      delays: corrections.delays.map(({ leftS, delayS }) => ({ leftUtc: utcText(leftS)!, delayS })),
    },
    sinkOnFinal: sink,
    windOnFinal: wind,
    threshold,
    touchdownDistanceFt,
    heightLostInMissedApproachFt: heightLostFt,
  };
  return {
    ...values,
    unknown: unknownOf(values, {
      correctionsOnFinal: NO_FINAL,
      sinkOnFinal: NO_FINAL,
      windOnFinal: 'Wind needs an airspeed and a heading in the log, on final.',
      threshold: 'The threshold was not crossed below 200 ft.',
      touchdownDistanceFt: 'No touchdown on this runway was recorded.',
      heightLostInMissedApproachFt: 'No missed approach was flown.',
    }),
  };
}
