import type { Debrief } from '../../core/debrief/debrief.ts';
import { factsOf, type ApproachFacts } from '../../core/progress/approach-facts.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import type { KeptFacts, KeptMeasure } from './tables.ts';

/** The rows that progress reads of a debrief, besides what its lesson says. */
export interface FactRows {
  readonly facts: readonly Omit<KeptFacts, 'debrief_id'>[];
  readonly measures: readonly Omit<KeptMeasure, 'debrief_id'>[];
}

/** @param standard the standard's JSON, by which the debrief was made */
export function factRows(debrief: Debrief, standard: string): FactRows {
  // Where it stands in the library, other rows say.
  const nowhere = { debriefId: '', lessonId: '', date: '' };
  const all = factsOf({ ...nowhere, standardKey: sha256Of(standard), debrief });
  return { facts: all.map(factRow), measures: all.flatMap(measureRows) };
}

function factRow(facts: ApproachFacts): FactRows['facts'][number] {
  const verdictAt = (gate: string) => facts.gates.find((one) => one.gate === gate)?.verdict ?? null;
  return {
    number: facts.number,
    log_sha256: facts.logSha256,
    end_utc: facts.endUtc,
    standard_sha256: facts.standardKey,
    engine_version: facts.engineVersion,
    flown: facts.flown,
    conditions: facts.conditions,
    turbulence: facts.turbulence,
    localizer_full_scale_deg: facts.localizerFullScaleDeg,
    gate_1000: verdictAt('gate-1000'),
    gate_500: verdictAt('gate-500'),
    went_on: facts.wentOn,
  };
}

function measureRows({ number, criteria }: ApproachFacts): FactRows['measures'] {
  return criteria.map(({ id, title, verdict, insideShare, whyNoShare, rms, whyNoRms }, place) => ({
    number,
    criterion: id,
    place,
    title,
    verdict,
    inside_share: insideShare,
    rms,
    why_no_rms: whyNoRms,
    why_no_share: whyNoShare,
  }));
}

/** Within a `write`, after the approaches that they belong to. */
export function keepFacts(library: Library, debrief_id: string, { facts, measures }: FactRows): void {
  for (const row of facts) library.run(from.insertInto('approach_facts').values({ debrief_id, ...row }));
  if (measures.length > 0)
    library.run(from.insertInto('measures').values(measures.map((row) => ({ debrief_id, ...row }))));
}
