import type { ApproachDebrief, Debrief, DebriefCriterion, DebriefSegment } from '../debrief/debrief.ts';
import type { DebriefStability } from '../debrief/debrief.ts';
import { isSaidToBeDraft } from '../facility/drafted-from.ts';
import type { Verdict } from '../standard/judgement.ts';
import type { Conditions } from '../standard/stated.ts';
import { wentOn, type WentOn } from './went-on.ts';
import type { Flown } from './progress.ts';

/** A debrief and the lesson that it belongs to. */
export interface DebriefOfLesson {
  /** The library's. */
  readonly debriefId: string;
  readonly lessonId: string;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  /** Another one for every word that the standard says: one of one's own may change and keep its id. */
  readonly standardKey: string;
  readonly debrief: Debrief;
}

/** What progress reads of one approach; a small part of its debrief, of which there may be hundreds. */
export interface ApproachFacts {
  readonly debriefId: string;
  /** Of the approach in its debrief, from 1. */
  readonly number: number;
  readonly lessonId: string;
  readonly date: string;
  readonly logSha256: string;
  readonly startUtc: string;
  readonly endUtc: string;
  readonly kind: ApproachDebrief['kind'];
  /** By a facility with values that nobody had confirmed: it was flown, and nothing of it is judged. */
  readonly isByDraft: boolean;
  /** Its name. */
  readonly facility: string;
  readonly standard: { readonly id: string; readonly title: string; readonly source: string };
  readonly standardKey: string;
  readonly engineVersion: string;
  readonly flown: Flown;
  readonly conditions: Conditions;
  /** As it was stated; null: nobody said. */
  readonly turbulence: string | null;
  /** Of the localizer that was flown. */
  readonly localizerFullScaleDeg: number;
  readonly logKind: string;
  readonly wentOn: WentOn;
  readonly criteria: readonly CriterionFacts[];
  readonly gates: readonly Pick<DebriefStability, 'gate' | 'verdict'>[];
  /** Null: not graded. Open: it lies between two levels. */
  readonly level: { readonly level: number; readonly isOpen: boolean } | null;
  readonly score: number | null;
}

export interface CriterionFacts {
  readonly id: string;
  readonly title: string;
  readonly verdict: Verdict;
  /** Share of the distance flown inside the limit, where it counted, by the best figure; null with a reason, or where the criterion has none. */
  readonly insideShare: number | null;
  readonly whyNoShare: string | null;
  /** Over final; null with a reason, or where the criterion has none. */
  readonly rms: number | null;
  readonly whyNoRms: string | null;
}

/** Whether it can stand in any figure: what was no approach, went by guesses or was held to nothing, is told of and not counted. */
export function isCounted(facts: Pick<ApproachFacts, 'kind' | 'isByDraft' | 'criteria'>): boolean {
  return facts.kind === 'approach' && !facts.isByDraft && facts.criteria.length > 0;
}

/** An approach that was held to nothing: its heights seem to be in another unit, which its debrief says in place of a verdict. */
export function isUnitDoubted(facts: Pick<ApproachFacts, 'kind' | 'isByDraft' | 'criteria'>): boolean {
  return facts.kind === 'approach' && !facts.isByDraft && facts.criteria.length === 0;
}

/** What progress reads of a debrief, an entry for each approach and pass. */
export function factsOf({
  debriefId,
  lessonId,
  date,
  standardKey,
  debrief,
}: DebriefOfLesson): ApproachFacts[] {
  const { engineVersion, log, facility } = debrief;
  const { id, title, source } = debrief.standard;
  const isByDraft = isSaidToBeDraft(facility);
  const approaches = isByDraft ? debrief.approaches.map(unjudged) : debrief.approaches;
  return approaches.map((approach) => ({
    debriefId,
    number: approach.index,
    lessonId,
    date,
    logSha256: log.sha256,
    startUtc: approach.startUtc,
    endUtc: approach.endUtc,
    kind: approach.kind,
    isByDraft,
    facility: facility.name,
    standard: { id, title, source },
    standardKey,
    engineVersion,
    flown: approach.stated.flown,
    conditions: approach.stated.conditions,
    turbulence: approach.stated.turbulence,
    localizerFullScaleDeg: facility.derived.localizerFullScaleDeg,
    logKind: log.kind,
    wentOn: wentOn(approach, facility.derived.glidepathOrigin.elevationFt),
    criteria: approach.criteria.map((criterion) => criterionFacts(criterion, approach)),
    gates: approach.stability.map(({ gate, verdict }) => ({ gate, verdict })),
    level: approach.grade && {
      level: approach.grade.level,
      isOpen: approach.grade.levelLow !== approach.grade.levelHigh,
    },
    score: approach.grade?.score ?? null,
  }));
}

/** A guess is no limit: what it judged would stand in every rate as if it were known. */
function unjudged(approach: ApproachDebrief): ApproachDebrief {
  return { ...approach, criteria: [], stability: [], grade: null };
}

function criterionFacts(criterion: DebriefCriterion, approach: ApproachDebrief): CriterionFacts {
  const { id, title, verdict } = criterion;
  if (verdict === 'not-assessed')
    return { id, title, verdict, insideShare: null, whyNoShare: null, rms: null, whyNoRms: null };
  return { id, title, verdict, ...insideShare(criterion), ...rmsFor(id, approach) };
}

type InsideShare = Pick<CriterionFacts, 'insideShare' | 'whyNoShare'>;

function insideShare({ timeOutsideS, assessedNm, outsideNm }: DebriefCriterion): InsideShare {
  if (timeOutsideS === null) return { insideShare: null, whyNoShare: null };
  const none = (whyNoShare: string) => ({ insideShare: null, whyNoShare });
  // Nor null: a kept debrief has the keys of the version that made it.
  if (typeof assessedNm !== 'number' || outsideNm === null)
    return none('debriefed by a version that told no distance');
  if (assessedNm === 0) return none('the recorded position stood still');
  // Two sums of the same miles may differ in their last digits.
  return { insideShare: 1 - Math.min(outsideNm, assessedNm) / assessedNm, whyNoShare: null };
}

type Rms = Pick<CriterionFacts, 'rms' | 'whyNoRms'>;

/** The criteria of which a debrief tells the RMS where they count: before final it covers the turn on as well. */
const RMS_OF: Readonly<Record<string, (final: DebriefSegment) => Rms>> = {
  'localizer-final': ({ localizer }) => needleRms(localizer),
  'glidepath-final': ({ glidepath }) => needleRms(glidepath),
  'airspeed-final': ({ airspeed }) => speedRms(airspeed),
};

/** Whether a criterion is followed by its RMS. */
export function hasRms(id: string): boolean {
  return Object.hasOwn(RMS_OF, id);
}

function rmsFor(id: string, { segments, stated }: ApproachDebrief): Rms {
  if (!hasRms(id)) return { rms: null, whyNoRms: null };
  const final = segments.find(({ kind }) => kind === 'final');
  if (!final) return noRms('final was not flown');
  const isShared = stated.instructorFlew.some(
    ({ startUtc, endUtc }) => startUtc < final.endUtc && final.startUtc < endUtc,
  );
  if (isShared) return noRms('the instructor flew a part of final');
  return RMS_OF[id]!(final);
}

function needleRms(needle: DebriefSegment['localizer']): Rms {
  const rms = needle?.rmsFullScale ?? null;
  return rms === null ? noRms('nothing of this needle was recorded on final') : { rms, whyNoRms: null };
}

/** Off the target, from the mean and how far the speed spread around it. */
function speedRms(airspeed: DebriefSegment['airspeed']): Rms {
  if (airspeed === null || airspeed.targetKt === null) return noRms('no airspeed, or no target for it');
  if (airspeed.estimated) return noRms('the airspeed was estimated from the wind');
  return {
    rms: Math.hypot(airspeed.mean - airspeed.targetKt, airspeed.standardDeviation),
    whyNoRms: null,
  };
}

function noRms(why: string): Rms {
  return { rms: null, whyNoRms: why };
}
