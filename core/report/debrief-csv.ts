import type { ApproachDebrief, Debrief, DebriefCriterion } from '../debrief/debrief.ts';
import { csvCell } from './csv-cell.ts';

const COLUMNS = [
  'file',
  'approach',
  'startUtc',
  'outcome',
  'standard',
  'criterion',
  'title',
  'lower',
  'upper',
  'unit',
  'measured',
  'assessedS',
  'outsideS',
  'verdict',
  'why',
  'points',
  'pointsPossible',
  'level',
  'score',
  'assessedNm',
  'outsideNm',
] as const;

type Row = Readonly<Record<(typeof COLUMNS)[number], string | number | null>>;

/** Debriefs as a table, one line a criterion; what is not known is an empty cell. */
export function debriefsCsv(debriefs: readonly Debrief[]): string {
  const rows = debriefs.flatMap((debrief) =>
    debrief.approaches.flatMap((approach) =>
      approach.criteria.map((criterion) => rowOf(debrief, approach, criterion)),
    ),
  );
  const lines = rows.map((row) => COLUMNS.map((column) => csvCell(row[column])).join(','));
  return `${[COLUMNS.join(','), ...lines].join('\n')}\n`;
}

function rowOf({ log, standard }: Debrief, approach: ApproachDebrief, criterion: DebriefCriterion): Row {
  const { index, startUtc, outcome, grade } = approach;
  const { id, title, lower, upper, unit, measured, assessedS, timeOutsideS, verdict, why } = criterion;
  return {
    file: log.file,
    approach: index,
    startUtc,
    outcome,
    standard: standard.id,
    criterion: id,
    title,
    lower,
    upper,
    unit,
    measured,
    assessedS,
    outsideS: timeOutsideS?.best ?? null,
    verdict,
    why,
    points: criterion.points,
    pointsPossible: criterion.pointsPossible,
    level: grade?.level ?? null,
    score: grade?.score ?? null,
    assessedNm: criterion.assessedNm,
    outsideNm: criterion.outsideNm,
  };
}
