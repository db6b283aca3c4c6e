import type { Debrief } from '../../core/debrief/debrief.ts';
import { factsOf, type ApproachFacts } from '../../core/progress/approach-facts.ts';
import { sha256Of } from './log-files.ts';
import { mixText } from './mix-text.ts';
import type { KeptFacts, KeptMeasure } from './tables.ts';

/** The rows that progress reads of one approach, besides what its lesson says. */
export interface FactRows {
  /** Of the approach, within its debrief. */
  readonly number: number;
  readonly facts: Omit<KeptFacts, 'approach_id'>;
  readonly measures: readonly Omit<KeptMeasure, 'approach_id'>[];
}

/** Of every approach of a debrief. @param standard the standard's JSON, by which the debrief was made */
export function factRows(debrief: Debrief, standard: string): FactRows[] {
  // Where it stands in the library, other rows say.
  const nowhere = { debriefId: '', lessonId: '', date: '' };
  const all = factsOf({ ...nowhere, standardKey: sha256Of(standard), debrief });
  return all.map((facts) => ({ number: facts.number, facts: factRow(facts), measures: measureRows(facts) }));
}

function factRow(facts: ApproachFacts): FactRows['facts'] {
  const verdictAt = (gate: string) => facts.gates.find((one) => one.gate === gate)?.verdict ?? null;
  return {
    log_sha256: facts.logSha256,
    end_utc: facts.endUtc,
    standard_sha256: facts.standardKey,
    engine_version: facts.engineVersion,
    mix: mixText(facts),
    gate_1000: verdictAt('gate-1000'),
    gate_500: verdictAt('gate-500'),
    went_on: facts.wentOn,
    by_draft: Number(facts.isByDraft),
  };
}

function measureRows({ criteria }: ApproachFacts): FactRows['measures'] {
  return criteria.map(({ id, title, verdict, insideShare, whyNoShare, rms, whyNoRms }, place) => ({
    criterion: id,
    place,
    title,
    verdict,
    inside_share: insideShare,
    why_no_share: whyNoShare,
    rms,
    why_no_rms: whyNoRms,
  }));
}
