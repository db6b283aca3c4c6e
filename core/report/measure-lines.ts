import type { DebriefMeasures } from '../debrief/debrief.ts';
import { whole } from '../units/whole.ts';
import { pageLines } from './text-rows.ts';

/** What was measured of an approach as a whole, in sentences. */
export function measureLines(measures: DebriefMeasures): string[] {
  const { correctionsOnFinal, sinkOnFinal, windOnFinal, threshold } = measures;
  const found: string[] = [];
  if (sinkOnFinal)
    found.push(
      `Sink rate on final ${whole(sinkOnFinal.heldFpm)} ft/min; the path needed ${whole(sinkOnFinal.neededFpm)}.`,
    );
  if (correctionsOnFinal && correctionsOnFinal.count > 0)
    found.push(
      `${changes(correctionsOnFinal.count)} of track on final of 2° or more, ` +
        `${whole(correctionsOnFinal.meanDeg!)}° on average and ${whole(correctionsOnFinal.largestDeg!)}° at most.`,
    );
  if (windOnFinal) found.push(windSentence(windOnFinal));
  if (threshold) found.push(thresholdSentence(threshold));
  if (measures.touchdownDistanceFt !== null)
    found.push(`Touched down ${whole(measures.touchdownDistanceFt)} ft past the threshold.`);
  if (measures.heightLostInMissedApproachFt !== null)
    found.push(
      `Lost ${whole(measures.heightLostInMissedApproachFt)} ft after the missed approach was begun.`,
    );
  return found.flatMap(pageLines);
}

function changes(count: number): string {
  return count === 1 ? '1 change' : `${count} changes`;
}

function windSentence(wind: NonNullable<DebriefMeasures['windOnFinal']>): string {
  const { fromTrueDeg, speedKt, headwindKt, crosswindFromRightKt } = wind;
  const along = `${whole(Math.abs(headwindKt))} kt ${headwindKt < 0 ? 'tailwind' : 'headwind'}`;
  const across = `${whole(Math.abs(crosswindFromRightKt))} kt from the ${crosswindFromRightKt < 0 ? 'left' : 'right'}`;
  const from = String(Math.round(fromTrueDeg) % 360).padStart(3, '0');
  return `Wind on final from ${from}° true at ${whole(speedKt)} kt: ${along}, ${across}.`;
}

function thresholdSentence({ heightFt, offsetFt }: NonNullable<DebriefMeasures['threshold']>): string {
  const feet = whole(Math.abs(offsetFt));
  const where = feet === '0' ? 'on' : `${feet} ft ${offsetFt < 0 ? 'left' : 'right'} of`;
  return `Crossed the threshold ${whole(heightFt)} ft above it, ${where} the centreline.`;
}
