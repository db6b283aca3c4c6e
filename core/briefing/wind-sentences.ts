import { bearingWords } from '../facility/wording.ts';
import { directionWords } from '../report/plain-words.ts';
import { componentWords } from '../report/wind-lines.ts';
import { whole } from '../units/whole.ts';
import type { BriefedHeading, Briefing } from './briefing.ts';

/** A groundspeed so much off the one that wind and airspeed make is said to be. Ours. */
const NOTABLY_KT = 5;

/** The wind on the course, the heading that holds it, and whether the groundspeed given goes with it. */
export function windSentences({ wind, descents }: Briefing): string[] {
  if (wind === null) return [];
  const { fromTrueDeg, speedKt, airspeedKt, heading } = wind;
  const from = `Wind from ${directionWords(fromTrueDeg)} true at ${whole(speedKt)} kt: ${componentWords(wind)}.`;
  if (airspeedKt === null) return [from];
  if (heading === null) return [from, `At ${whole(airspeedKt)} kt no heading holds the course in it.`];
  const askedKt = descents.find(({ isAsked }) => isAsked)?.groundspeedKt ?? null;
  const isOff = askedKt !== null && Math.abs(heading.groundspeedKt - askedKt) >= NOTABLY_KT;
  return [
    from,
    headingSentence(airspeedKt, heading),
    ...(isOff ? [`That is not the groundspeed of ${whole(askedKt)} kt that was given.`] : []),
  ];
}

function headingSentence(airspeedKt: number, heading: BriefedHeading): string {
  const { trueAirspeedKt, trueDeg, magneticDeg, groundspeedKt } = heading;
  const nose =
    magneticDeg === null ? `${bearingWords(trueDeg)}° true` : `${bearingWords(magneticDeg)}° magnetic`;
  return `At ${whole(airspeedKt)} kt indicated (${whole(trueAirspeedKt)} kt true): heading ${nose}, ${driftWords(heading)}; groundspeed ${whole(groundspeedKt)} kt.`;
}

function driftWords({ correctionDeg }: BriefedHeading): string {
  const degrees = Math.round(Math.abs(correctionDeg));
  if (degrees === 0) return 'no drift';
  return `${degrees}° of drift to the ${correctionDeg > 0 ? 'left' : 'right'}`;
}
