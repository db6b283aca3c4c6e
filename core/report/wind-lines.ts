import type { DebriefMeasures } from '../debrief/debrief.ts';
import { whole } from '../units/whole.ts';
import { directionWords } from './plain-words.ts';

type Wind = NonNullable<DebriefMeasures['windOnFinal']>;

/** The wind on final, at the gate and at the threshold, a sentence each where it is known. */
export function windSentences({ windOnFinal, windAt1000, windAtThreshold }: DebriefMeasures): string[] {
  return [
    ...(windOnFinal ? [onFinalSentence(windOnFinal)] : []),
    ...(windAt1000 ? [momentSentence('at the 1,000 ft gate', windAt1000)] : []),
    // Near the ground a crosswind is often met by a slip, in which the nose no longer shows it.
    ...(windAtThreshold
      ? [momentSentence('at the threshold, if flown without a slip', windAtThreshold)]
      : []),
  ];
}

function onFinalSentence(wind: Wind): string {
  const vector = `from ${directionWords(wind.fromTrueDeg)} true at ${whole(wind.speedKt)} kt, ± ${whole(wind.errorKt)} kt`;
  return isLight(wind)
    ? `Wind on final: light, not told apart from calm (${vector}).`
    : `Wind on final ${vector}: ${componentWords(wind)}.`;
}

function momentSentence(moment: string, wind: Wind): string {
  const components = `${componentWords(wind)}, ± ${whole(wind.errorKt)} kt`;
  return isLight(wind)
    ? `Wind ${moment}: light, not told apart from calm (${components}).`
    : `Wind ${moment}: ${components}.`;
}

function isLight({ speedKt, errorKt }: Wind): boolean {
  return speedKt <= errorKt;
}

/** Along and across: "12 kt headwind, 5 kt from the left". */
export function componentWords({
  headwindKt,
  crosswindFromRightKt,
}: Pick<Wind, 'headwindKt' | 'crosswindFromRightKt'>): string {
  const along = `${whole(Math.abs(headwindKt))} kt ${headwindKt < 0 ? 'tailwind' : 'headwind'}`;
  return `${along}, ${whole(Math.abs(crosswindFromRightKt))} kt from the ${crosswindFromRightKt < 0 ? 'left' : 'right'}`;
}
