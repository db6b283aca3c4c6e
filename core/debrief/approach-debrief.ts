import { facilityDoubts } from '../approach/facility-doubts.ts';
import type { HeightUnitDoubt } from '../approach/height-unit-doubt.ts';
import { wholeMeasures } from '../approach/whole-measures.ts';
import { gradeOf, type Grade, type NotGraded } from '../grade/grade.ts';
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

/**
 * The debrief of one approach, or of a pass, which is told and not judged; nor is anything whose heights are in a unit
 * that is doubted.
 */
export function approachDebrief(
  sitting: Case,
  variationDeg: number | null,
  index: number,
  unitDoubt: HeightUnitDoubt | null = null,
): ApproachDebrief {
  const { flown, approach, stated } = sitting;
  const measures = wholeMeasures(flown, approach, variationDeg);
  const air = airOf(sitting, variationDeg);
  // A wrong unit is no fault of the facility.
  const issues = unitDoubt === null ? facilityDoubts(flown, approach, measures.rollout) : [];
  const told = {
    index,
    kind: approach.kind,
    startUtc: utcText(approach.startS)!,
    endUtc: utcText(approach.endS)!,
    outcome: approach.outcome,
    events: eventDebriefs(flown, approach),
    measures: measuresDebrief(measures, approach, air.noWind),
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
      grade: null,
      notGradedBecause: unitDoubt?.notGradedBecause ?? `not graded: ${approach.why!}`,
      findings: [],
    };
  const judgement = judgeApproach(sitting);
  const graded = gradeOf(judgement);
  return {
    ...told,
    segments: approach.segments.map((segment) => segmentDebrief(sitting, air, segment, judgement.criteria)),
    stability: judgement.gates.map(stabilityDebrief),
    criteria: judgement.criteria.map((criterion) =>
      criterionDebrief(criterion, graded.points.find(({ id }) => id === criterion.id) ?? null),
    ),
    summary: summaryOf(sitting, judgement),
    ...gradeDebrief(graded),
    findings: withRemarks(
      findFindings(askedOf(sitting, judgement, measures), issues),
      told.startUtc,
      stated.remarks,
    ),
  };
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
