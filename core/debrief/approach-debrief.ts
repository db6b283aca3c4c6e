import type { FlownApproach } from '../approach/flown-approach.ts';
import type { Flown } from '../approach/flown.ts';
import type { WholeMeasures } from '../approach/whole-measures.ts';
import { utcText } from '../units/utc.ts';
import type { ApproachDebrief, DebriefCriterion, DebriefSegment } from './debrief.ts';
import { eventDebriefs } from './event-debrief.ts';
import { measuresDebrief } from './measures-debrief.ts';
import { needleCriterion } from './needle-criterion.ts';
import { segmentDebrief } from './segment-debrief.ts';
import { summaryOf } from './summary.ts';

/** The debrief of one approach or pass. */
export function approachDebrief(
  flown: Flown,
  approach: FlownApproach,
  measures: WholeMeasures,
  index: number,
): ApproachDebrief {
  const segments = approach.segments.map((segment) => segmentDebrief(flown, segment));
  const criteria = approach.kind === 'approach' ? criteriaOf(segments, approach.flownToDecision) : [];
  return {
    index,
    kind: approach.kind,
    startUtc: utcText(approach.startS)!,
    endUtc: utcText(approach.endS)!,
    outcome: approach.outcome,
    events: eventDebriefs(flown, approach),
    segments,
    stability: [],
    criteria,
    measures: measuresDebrief(measures),
    stated: { conditions: 'not-stated', visualReferenceAtMinimums: 'not-stated' },
    summary: summaryOf(approach, criteria),
    grade: null,
    notGradedBecause:
      approach.why === null
        ? 'not graded: this version judges the two needles on final and nothing else'
        : `not graded: ${approach.why}`,
    findings: [],
  };
}

function criteriaOf(segments: readonly DebriefSegment[], flownToDecision: boolean): DebriefCriterion[] {
  const final = segments.find(({ kind }) => kind === 'final');
  if (!final?.localizer || !final.glidepath) return [];
  const { localizer, glidepath, unrecordedS } = final;
  return [
    needleCriterion('localizer-final', 'Localizer on final', localizer, unrecordedS, flownToDecision),
    needleCriterion('glidepath-final', 'Glidepath on final', glidepath, unrecordedS, flownToDecision),
  ];
}
