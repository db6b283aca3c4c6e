import type { DebriefStated } from '../debrief/debrief.ts';
import { dayAndClock, directionWords } from './plain-words.ts';
import { pageLines } from './text-rows.ts';

const CONDITIONS = {
  imc: 'instrument conditions',
  simulated: 'simulated instrument conditions',
  vmc: 'visual conditions',
};
const RUNWAY = { seen: 'runway in sight at minimums', 'not-seen': 'runway not in sight at minimums' };

/** What was stated about an approach, as lines of a page; nothing where nothing was. */
export function statedLines(stated: DebriefStated): string[] {
  const sentence = statedSentence(stated);
  return sentence === null ? [] : pageLines(sentence);
}

/** What was stated about an approach; null where nothing was. */
export function statedSentence(stated: DebriefStated): string | null {
  const { conditions, visualReferenceAtMinimums: runway } = stated;
  const speeds: [string, number | null][] = [
    ['target airspeed on final', stated.targetAirspeedKt],
    ['airspeed before final', stated.interceptAirspeedKt],
    ['Vref', stated.vrefKt],
  ];
  const said = [
    ...(conditions === 'not-stated' ? [] : [CONDITIONS[conditions]]),
    ...(runway === 'not-stated' ? [] : [RUNWAY[runway]]),
    ...speeds.flatMap(([words, kt]) => (kt === null ? [] : [`${words} ${kt} kt`])),
    ...(stated.assignedAltitudeFt === null ? [] : [`assigned altitude ${stated.assignedAltitudeFt} ft`]),
    ...(stated.wind === null
      ? []
      : [`wind from ${directionWords(stated.wind.fromTrueDeg)} true at ${stated.wind.speedKt} kt`]),
    ...(stated.hood === null ? [] : [stated.hood ? 'under the hood' : 'without a hood']),
    ...(stated.flown === null ? [] : [stated.flown]),
    ...(stated.vectoredInsideFix ? ['vectored inside the fix'] : []),
    ...(stated.engineOut ? ['engine out'] : []),
    ...(stated.turbulence === null ? [] : [`turbulence: ${stated.turbulence}`]),
    ...stated.instructorFlew.map(({ startUtc, endUtc }) => {
      return `instructor's controls ${dayAndClock(startUtc).clock} to ${dayAndClock(endUtc).clock}`;
    }),
  ];
  return said.length === 0 ? null : `Stated: ${said.join(', ')}.`;
}
