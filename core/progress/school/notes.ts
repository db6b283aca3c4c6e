import { listed } from '../../units/listed.ts';
import { inSentence } from '../in-sentence.ts';
import { counted } from '../sentences.ts';
import { approachesOf } from './counted.ts';
import type { SchoolCompared, SchoolGroups } from './school.ts';

/** What belongs beside the figures of a school, in sentences. */
export function notesOf({ approaches, valued }: SchoolCompared, groups: SchoolGroups | null): string[] {
  const without = approaches - valued;
  return [
    ...(without === 0 ? [] : [`${approachesOf(without)} without a figure of this measure.`]),
    'The interval of a share holds the true one with about 95 %; that the approaches of one student are alike is in it.',
    ...(groups ? groupNotes(groups) : []),
  ];
}

function groupNotes(groups: SchoolGroups): string[] {
  return [
    ...adjustmentNotes(groups),
    ...(groups.groups.some(({ comparison }) => comparison !== null) ? comparisonNotes(groups) : []),
    'What goes together need not be cause: nobody was given to a group by lot, and what students brought along is adjusted for by nothing here.',
    ...(groups.by === 'instructor' ? [REGRESSION] : []),
  ];
}

const REGRESSION =
  'Nothing here tells who teaches well. Who gets the weakest students looks worst by what they fly, and later best by how much they improve: whoever had a bad stretch does better after it with anybody (regression to the mean).';

function adjustmentNotes({ adjustment }: SchoolGroups): string[] {
  const titles = (which: readonly string[]) =>
    adjustment.filter(({ adjusted }) => which.includes(adjusted)).map(({ title }) => inSentence(title));
  const done = titles(['yes', 'partly']);
  const alike = titles(['alike']);
  const isExperience = adjustment.some(
    ({ factor, adjusted }) => factor === 'experience' && adjusted === 'yes',
  );
  return [
    done.length === 0
      ? `${alike.length === adjustment.length ? 'There was nothing to adjust for' : 'Nothing could be adjusted for'}; each student counts once.`
      : `Adjusted for ${listed(done)}, by how the approaches of one and the same student differ; each student counts once.`,
    ...adjustment.flatMap(({ why }) => (why === null ? [] : [`Not adjusted for. ${why}`])),
    ...(alike.length === 0 ? [] : [`The same in all: ${listed(alike)}.`]),
    ...(isExperience
      ? [
          'Lessons flown before stand for experience, each for as much as the other: hours are not in the library.',
        ]
      : []),
    ...(adjustment.some(({ factor, adjusted }) => factor === 'course-width' && adjusted !== 'alike')
      ? ['The classes of course width are our own.']
      : []),
  ];
}

function comparisonNotes({ comparisons, confidence, groups }: SchoolGroups): string[] {
  const isWithin = groups.some(({ comparison }) => comparison?.how === 'within-students');
  const percent = (confidence.together * 100).toFixed(1);
  return [
    comparisons === 1
      ? 'One difference was looked at: better and worse are said where its 95 % interval leaves 0 out.'
      : `${counted(comparisons, 'difference')} were looked at, of which one may be far from 0 by chance: better and worse are said where an interval of ${percent} % leaves 0 out (0.05 shared by all of them), perhaps where that of 95 % does.`,
    ...(isWithin
      ? [
          'Where more than a fifth of the students flew both here and elsewhere, these are compared with themselves.',
        ]
      : []),
  ];
}
