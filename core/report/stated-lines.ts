import type { ApproachDebrief, DebriefCriterion } from '../debrief/debrief.ts';
import type { Allowance } from '../standard/stated.ts';
import { roomWords } from './criterion-lines.ts';
import { dayAndClock, directionWords } from './plain-words.ts';
import { pageLines } from './text-rows.ts';

const CONDITIONS = {
  imc: 'instrument conditions',
  simulated: 'simulated instrument conditions',
  vmc: 'visual conditions',
};
const RUNWAY = { seen: 'runway in sight at minimums', 'not-seen': 'runway not in sight at minimums' };

/** What was stated about an approach, and its criteria, by whose titles allowances are told. */
type Told = Pick<ApproachDebrief, 'stated' | 'criteria'>;

/** What was stated about an approach, in lines of a page; nothing where nothing was. */
export function statedLines(told: Told): string[] {
  const sentence = statedSentence(told);
  return sentence === null ? [] : pageLines(sentence);
}

/** The same as one sentence; null where nothing was stated. */
export function statedSentence({ stated, criteria }: Told): string | null {
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
    ...stated.allowances.map((allowance) => allowanceWords(allowance, criteria)),
  ];
  return said.length === 0 ? null : `Stated: ${said.join(', ')}.`;
}

/** An allowance is told also where its criterion was not assessed, or is none of the standard's. */
function allowanceWords({ criterion, by, reason }: Allowance, criteria: readonly DebriefCriterion[]): string {
  const known = criteria.find(({ id }) => id === criterion);
  const title = known?.title ?? criterion;
  return `${roomWords(by, known?.unit ?? null)} more allowed on "${title}" for ${reason}`;
}
