import { indentedLines, pageLines, textCells } from '../../report/text-rows.ts';
import { VERDICTS } from '../../report/verdict-words.ts';
import { listed } from '../../units/listed.ts';
import { inSentence } from '../in-sentence.ts';
import { counted, dayOf } from '../sentences.ts';
import { mixTitle } from './case-mix.ts';
import { comparisonSentences } from './comparison-words.ts';
import { approachesOf } from './counted.ts';
import { coverageSentences } from './coverage-words.ts';
import { OUTCOME_WORDS } from './outcome-words.ts';
import type { Interval, School, StudentNeed } from './school.ts';
import { valueFigure, valueTitle } from './value-words.ts';

/** A school as a page to read aloud, at most 100 columns: first one sentence, then what it stands on. */
export function schoolText(school: School): string {
  const blocks = [
    pageLines(firstSentence(school)),
    comparedLines(school),
    needLines(school),
    outcomeLines(school),
    groupLines(school),
    lessonLines(school),
    distributionLines(school),
    mixLines(school),
    school.notes.flatMap((note) => pageLines(note)),
    leftOutLines(school),
    coverageLines(school),
    school.cautions.flatMap((caution) => pageLines(`Caution: ${caution}`)),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

function firstSentence({ compared, measure, needs, outcomes }: School): string {
  if (compared === null) return 'No approach of the school is there to compare.';
  const [from, to] = [dayOf(compared.from), dayOf(compared.to)];
  const over =
    `Over ${approachesOf(compared.approaches)} of ${counted(compared.students, 'student')}, ` +
    (from === to ? `on ${from}` : `from ${from} to ${to}`);
  const flagged = needs.filter(({ isFlagged }) => isFlagged).length;
  const what =
    measure.measure === 'level' ? 'was below level 3' : `did not meet ${inSentence(measure.title)}`;
  const need =
    `${flagged === 0 ? 'no student' : counted(flagged, 'student')} lately ` +
    `${flagged > 1 ? what.replace(/^was/, 'were') : what} in at least half of three or more that were decided`;
  const stable = outcomes?.shares.find(({ outcome }) => outcome === 'stable');
  return `${over}, ${need}${stable ? `, and ${percent(stable.share)} of those decided stayed stable from their gate on` : ''}.`;
}

function comparedLines({ compared, measure }: School): string[] {
  if (compared === null) return [];
  const { standardSource, engineVersion, valued, approaches } = compared;
  const some = valued === approaches ? '' : ` ${valued} of ${approachesOf(approaches)} have a figure.`;
  return pageLines(
    `Judged by ${standardSource}; debriefed by version ${engineVersion}. ` +
      `Measure: ${inSentence(measure.title)}, ${inSentence(valueTitle(measure))}, ${measure.better} is better.${some}`,
  );
}

function needLines({ needs }: School): string[] {
  if (needs.length === 0) return [];
  return ['Who needs what, by the latest lessons', ...needs.flatMap(needLine)];
}

function needLine({ name, lessons, verdicts, isFlagged }: StudentNeed): string[] {
  const decided = verdicts.met + verdicts['not-met'];
  const besides = (['unclear', 'not-assessed'] as const).flatMap((verdict) =>
    verdicts[verdict] === 0 ? [] : [`${verdicts[verdict]} ${VERDICTS[verdict].word}`],
  );
  const also = besides.length === 0 ? '' : `, besides ${listed(besides)}`;
  const told = `not met in ${verdicts['not-met']} of ${approachesOf(decided)} in ${lessons === 1 ? 'one lesson' : `the latest ${lessons} lessons`}${also}`;
  return indentedLines(`  ${isFlagged ? VERDICTS['not-met'].sign : ' '} `, `${name}: ${told}.`);
}

function outcomeLines({ outcomes }: School): string[] {
  if (outcomes === null) return [];
  const { decided, students, shares, unclear, notAssessed } = outcomes;
  return [
    ...pageLines(
      `What became of ${approachesOf(decided)} of ${counted(students, 'student')}, besides ${unclear} unclear and ${notAssessed} not assessed`,
    ),
    ...shares.flatMap(({ outcome, count, share, interval }) =>
      indentedLines(
        '  ',
        `${OUTCOME_WORDS[outcome]}: ${count}, which is ${percent(share)}${range(interval)}`,
      ),
    ),
  ];
}

function range(interval: Interval | null): string {
  return interval === null ? '' : ` (between ${percent(interval.low)} and ${percent(interval.high)})`;
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function groupLines({ groups, measure }: School): string[] {
  if (groups === null || groups.groups.length === 0) return [];
  return [
    `Groups, by ${groups.by === 'instructor' ? 'instructor' : inSentence(mixTitle(groups.by))}`,
    ...groups.groups.flatMap((group) => {
      const { label, students, approaches, mean, adjustedMean } = group;
      const values =
        mean === null
          ? ''
          : `; mean ${valueFigure(mean, measure)}, adjusted ${valueFigure(adjustedMean, measure)}`;
      return [
        ...indentedLines(
          '  ',
          `${label}: ${counted(students, 'student')}, ${approachesOf(approaches)}${values}.`,
        ),
        ...indentedLines('      ', comparisonSentences(group, groups, measure).join(' ')),
      ];
    }),
  ];
}

function lessonLines({ students, measure }: School): string[] {
  if (students.length === 0) return [];
  const last = Math.max(...students.flatMap(({ lessons }) => lessons.map(({ ordinal }) => ordinal)));
  const ordinals = Array.from({ length: last }, (_, i) => i + 1);
  return [
    `${valueTitle(measure)}, lesson by lesson`,
    ...students.flatMap(({ name, lessons }) => {
      const values = ordinals.map((ordinal) => {
        const cell = lessons.find((one) => one.ordinal === ordinal);
        return valueFigure(cell?.value ?? null, measure);
      });
      return indentedLines('  ', `${name}: ${values.join('  ')}`);
    }),
  ];
}

function distributionLines({ distribution, measure }: School): string[] {
  if (distribution.length === 0) return [];
  return [
    `${valueTitle(measure)}, over students`,
    textCells('', ['students', 'least', 'quarter', 'middle', 'quarter', 'largest'], 10),
    ...distribution.map(({ ordinal, students, least, lowerQuartile, median, upperQuartile, largest }) =>
      textCells(
        `lesson ${ordinal}`,
        [
          students,
          ...[least, lowerQuartile, median, upperQuartile, largest].map((v) => valueFigure(v, measure)),
        ],
        10,
      ),
    ),
  ];
}

function mixLines({ caseMix }: School): string[] {
  if (caseMix.every(({ values }) => values.length === 0)) return [];
  return [
    'What was flown, whatever is filtered',
    ...caseMix.flatMap(({ title, values }) =>
      indentedLines(
        '  ',
        `${title}: ${values.map(({ label, approaches }) => `${label} ${approaches}`).join(', ')}`,
      ),
    ),
  ];
}

function leftOutLines({ leftOut }: School): string[] {
  if (leftOut.length === 0) return [];
  return ['Left out', ...leftOut.flatMap(({ sentence }) => indentedLines('  ', sentence))];
}

function coverageLines(school: School): string[] {
  const sentences = coverageSentences(school);
  return sentences.length === 0
    ? []
    : ['Of which there is no figure', ...sentences.flatMap((sentence) => indentedLines('  ', sentence))];
}
