import { csvCell } from '../../report/csv-cell.ts';
import type { OutcomeShare, School, SchoolCell, SchoolGroup } from './school.ts';

const COLUMNS = [
  'kind',
  'standard',
  'engineVersion',
  'criterion',
  'measure',
  'unit',
  'groupedBy',
  'label',
  'lesson',
  'date',
  'students',
  'approaches',
  'value',
  'met',
  'notMet',
  'unclear',
  'notAssessed',
  'adjustedValue',
  'difference',
  'low',
  'high',
  'standing',
  'chanceOfDoingBetter',
  'whyNot',
] as const;

type Row = Readonly<Partial<Record<(typeof COLUMNS)[number], string | number | null>>>;

/**
 * A school as a table, in three kinds of lines: `lesson` of a student, `outcome`, whose value is a share with its
 * interval, and `group`, whose interval is that of its difference from all others.
 */
export function schoolCsv(school: School): string {
  const { students, outcomes, groups } = school;
  const rows: Row[] = [
    ...students.flatMap(({ name, lessons }) => lessons.map((lesson) => lessonRow(name, lesson))),
    ...(outcomes?.shares ?? []).map(outcomeRow),
    ...(groups?.groups ?? []).map((group) => ({ ...groupRow(group), groupedBy: groups!.by })),
  ];
  const same = sameInAll(school);
  const lines = rows.map((row) =>
    COLUMNS.map((column) => csvCell({ ...same, ...row }[column] ?? null)).join(','),
  );
  return `${[COLUMNS.join(','), ...lines].join('\n')}\n`;
}

function sameInAll({ compared, measure }: School): Row {
  return {
    standard: compared?.standardTitle ?? null,
    engineVersion: compared?.engineVersion ?? null,
    criterion: measure.id,
    measure: measure.measure,
    unit: measure.unit,
  };
}

function lessonRow(name: string, { ordinal, date, approaches, value, verdicts }: SchoolCell): Row {
  return {
    kind: 'lesson',
    label: name,
    lesson: ordinal,
    date,
    approaches,
    value,
    met: verdicts.met,
    notMet: verdicts['not-met'],
    unclear: verdicts.unclear,
    notAssessed: verdicts['not-assessed'],
  };
}

/** What became of approaches has nothing to do with the measure. */
function outcomeRow({ outcome, count, share, interval }: OutcomeShare): Row {
  return {
    kind: 'outcome',
    criterion: 'stability',
    measure: 'share',
    unit: 'share',
    label: outcome,
    approaches: count,
    value: share,
    low: interval?.low ?? null,
    high: interval?.high ?? null,
  };
}

function groupRow({ label, students, approaches, mean, adjustedMean, comparison, whyNot }: SchoolGroup): Row {
  return {
    kind: 'group',
    label,
    students,
    approaches,
    value: mean,
    adjustedValue: adjustedMean,
    difference: comparison?.difference ?? null,
    low: comparison?.interval.low ?? null,
    high: comparison?.interval.high ?? null,
    standing: comparison?.standing ?? null,
    chanceOfDoingBetter: comparison?.superiority.chance ?? null,
    whyNot,
  };
}
