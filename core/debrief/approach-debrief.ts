import { facilityDoubts } from '../approach/facility-doubts.ts';
import type { HeightUnitDoubt } from '../approach/height-unit-doubt.ts';
import { wholeMeasures } from '../approach/whole-measures.ts';
import { gradeOf, NOT_GRADED_AT_A_DRAFT, type Grade, type NotGraded } from '../grade/grade.ts';
import type { Issue } from '../issue/issue.ts';
import type { Case } from '../standard/case.ts';
import { judgeApproach } from '../standard/judge-approach.ts';
import type { Stated } from '../standard/stated.ts';
import { utcText } from '../units/utc.ts';
import { airOf } from './air.ts';
import { criterionDebrief, spanDebrief } from './criterion-debrief.ts';
import type { ApproachDebrief, DebriefStated } from './debrief.ts';
import { eventDebriefs } from './event-debrief.ts';
import { askedOf } from './findings/asked.ts';
import { findFindings } from './findings/find-findings.ts';
import { withRemarks } from './findings/remarks.ts';
import { measuresDebrief } from './measures-debrief.ts';
import { segmentDebrief } from './segment-debrief.ts';
import { stabilityDebrief } from './stability-debrief.ts';
import { passSummary, summaryOf } from './summary.ts';

/** What an approach has from its log and its facility. */
interface Given {
  readonly variationDeg: number | null;
  /** Says that the facility is a draft with values that nobody has confirmed; empty where it is none. */
  readonly draft: readonly Issue[];
  /** Why the heights are taken for ones in another unit; null where they are not. */
  readonly unitDoubt: HeightUnitDoubt | null;
  readonly index: number;
}

/**
 * The debrief of one approach, or of a pass, which is told and not judged; nor is anything whose heights are in a unit
 * that is doubted. By a draft it is neither graded nor advised.
 */
export function approachDebrief(
  sitting: Case,
  { variationDeg, draft, unitDoubt, index }: Given,
): ApproachDebrief {
  const { flown, approach, stated } = sitting;
  const measures = wholeMeasures(flown, approach, variationDeg);
  const air = airOf(sitting, measures, variationDeg);
  const isDraft = draft.length > 0;
  // A wrong unit is no fault of the facility.
  const doubts = unitDoubt === null ? facilityDoubts(flown, approach, measures.rollout) : [];
  const issues = [...draft, ...doubts];
  const told = {
    index,
    kind: approach.kind,
    startUtc: utcText(approach.startS)!,
    endUtc: utcText(approach.endS)!,
    outcome: approach.outcome,
    events: eventDebriefs(flown, approach),
    measures: measuresDebrief(measures, approach, { noWind: air.noWind, isDraft }),
    stated: statedDebrief(stated),
    issues,
  };
  if (unitDoubt !== null || approach.kind !== 'approach')
    return {
      ...told,
      segments: approach.segments.map((segment) => segmentDebrief(sitting, air, segment, [])),
      stability: [],
      criteria: [],
      summary: unitDoubt?.summary ?? passSummary(approach),
      safety: [],
      grade: null,
      notGradedBecause: unitDoubt?.notGradedBecause ?? `not graded: ${approach.why!}`,
      findings: [],
    };
  const judgement = judgeApproach(sitting);
  const graded = isDraft ? NOT_GRADED_AT_A_DRAFT : gradeOf(judgement);
  return {
    ...told,
    segments: approach.segments.map((segment) => segmentDebrief(sitting, air, segment, judgement.criteria)),
    stability: judgement.gates.map(stabilityDebrief),
    criteria: judgement.criteria.map((criterion) =>
      criterionDebrief(criterion, graded.points.find(({ id }) => id === criterion.id) ?? null),
    ),
    summary: isDraft ? byDraft(summaryOf(sitting, judgement)) : summaryOf(sitting, judgement),
    // Nor this: it would go by a guess.
    safety: isDraft ? [] : judgement.safety,
    ...gradeDebrief(graded),
    findings: withRemarks(
      findFindings(askedOf(sitting, judgement, measures), issues),
      told.startUtc,
      stated.remarks,
    ),
  };
}

/** The sentence stands alone in lists: there, too, it is to say what it goes by. */
function byDraft(summary: string): string {
  return `By an unconfirmed draft of the facility: ${summary[0]!.toLowerCase()}${summary.slice(1)}`;
}

function gradeDebrief(graded: Grade | NotGraded): Pick<ApproachDebrief, 'grade' | 'notGradedBecause'> {
  if (graded.level === null) return { grade: null, notGradedBecause: graded.notGradedBecause };
  const { points: _, ...grade } = graded;
  return { grade, notGradedBecause: null };
}

/** Remarks stand with the findings that they are about. */
function statedDebrief(stated: Stated): DebriefStated {
  const { instructorFlew, remarks: _, ...others } = stated;
  return { ...others, instructorFlew: instructorFlew.map(spanDebrief) };
}
