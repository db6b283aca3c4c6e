import { CRITERION_IDS, type CriterionId } from './criterion-ids.ts';
import type { Band } from './limit-schema.ts';
import { limit, symmetric, type Provenance } from './limit.ts';
import { handbookGates } from './shipped/handbook-gates.ts';
import type { GateLimits, Limit, MinimumsRule, Standard } from './standard.ts';
import type { StandardFile } from './standard-schema.ts';
import { standardById } from './standards.ts';

type Base = Pick<Standard, 'beforeFinal' | 'final' | 'gates' | 'minimums' | 'lacks'>;

/** What a user's standard starts from: the shipped one it is based on, or nothing but the handbook's gates. */
function baseOf({ basedOn }: StandardFile): Base {
  const shipped = basedOn === undefined ? null : standardById(basedOn);
  if (shipped !== null) return shipped;
  const final = { localizer: null, glidepath: null, airspeedKt: null, speedBasis: 'target' } as const;
  return {
    beforeFinal: { localizer: null, altitudeFt: null, airspeedKt: null },
    final: { ...final, airspeedAsymmetricKt: null, countsFrom: 'fix' },
    gates: handbookGates(final),
    minimums: null,
  };
}

/**
 * The standard that a user's file describes. What it gives comes from its own source; what it leaves out comes from
 * the standard it is based on, else there is no limit. It covers no task of an authority's standard, also when it is
 * based on one: its limits are others.
 */
export function completeStandard(file: StandardFile): Standard {
  const from: Provenance = { code: null, source: file.source, status: 'own choice' };
  const given = (band: Band | undefined): Limit | null =>
    band === undefined ? null : limit(band.lower ?? null, band.upper ?? null, from);
  const base = baseOf(file);
  const final = completeFinal(file, base.final, given);
  const limits = {
    beforeFinal: {
      localizer: given(file.beforeFinal?.localizerFullScale) ?? base.beforeFinal.localizer,
      altitudeFt: given(file.beforeFinal?.altitudeFt) ?? base.beforeFinal.altitudeFt,
      airspeedKt: given(file.beforeFinal?.airspeedKt) ?? base.beforeFinal.airspeedKt,
    },
    final,
    gates: completeGates(file, base.gates, final, given, from),
    minimums: completeMinimums(file, from) ?? base.minimums,
  };
  return {
    id: file.id,
    title: file.title,
    source: file.source,
    referenceId: null,
    ...limits,
    tasks: [],
    own: (file.own ?? []).map(({ id, title, quantity, lower, upper, source }) => ({
      id,
      title,
      quantity,
      limit: limit(lower ?? null, upper ?? null, { ...from, source: source ?? file.source }),
    })),
    lacks: reasonsForNone(limits, base.lacks ?? {}),
  };
}

type Given = (band: Band | undefined) => Limit | null;

function completeFinal(
  { final = {} }: StandardFile,
  base: Standard['final'],
  given: Given,
): Standard['final'] {
  const speedBasis = final.airspeedBasis ?? base.speedBasis;
  return {
    localizer: given(final.localizerFullScale) ?? base.localizer,
    glidepath: given(final.glidepathFullScale) ?? base.glidepath,
    airspeedKt: given(final.airspeedKt) ?? base.airspeedKt,
    speedBasis,
    // A band about the target says nothing about Vref, so it is not carried from one to the other.
    airspeedAsymmetricKt:
      given(final.airspeedAsymmetricKt) ??
      (speedBasis === base.speedBasis ? base.airspeedAsymmetricKt : null),
    countsFrom: final.countsFrom ?? base.countsFrom,
  };
}

/** What the file gives for final holds at the gates too, unless it gives something else there. */
function completeGates(
  { source, final = {}, gates = {} }: StandardFile,
  base: GateLimits,
  { speedBasis }: Standard['final'],
  given: Given,
  from: Provenance,
): GateLimits {
  const isOwn = Object.keys({ ...final, ...gates }).length > 0;
  return {
    instrumentFt: base.instrumentFt,
    visualFt: base.visualFt,
    datum: gates.datum ?? base.datum,
    source: isOwn ? `${source}; what it leaves open: ${base.source}` : base.source,
    localizer: given(gates.localizerFullScale ?? final.localizerFullScale) ?? base.localizer,
    glidepath: given(gates.glidepathFullScale ?? final.glidepathFullScale) ?? base.glidepath,
    airspeed: given(gates.airspeedKt ?? final.airspeedKt) ?? base.airspeed,
    speedBasis: gates.airspeedBasis ?? speedBasis,
    sinkFpm: gates.sinkFpm === undefined ? base.sinkFpm : limit(null, gates.sinkFpm, from),
    bankDeg: gates.bankDeg === undefined ? base.bankDeg : symmetric(gates.bankDeg, from),
  };
}

function completeMinimums({ minimums }: StandardFile, from: Provenance): MinimumsRule | null {
  if (minimums?.startWithinFt !== undefined) {
    const { lower = null, upper = null } = minimums.startWithinFt;
    return { kind: 'start-within-height', limit: limit(lower, upper, from) };
  }
  const seconds = minimums?.startWithinS;
  if (seconds === undefined) return null;
  return { kind: 'start-within-time', seconds, limit: limit(null, seconds, from) };
}

function reasonsForNone(
  { beforeFinal, final, minimums }: Pick<Standard, 'beforeFinal' | 'final' | 'minimums'>,
  known: NonNullable<Standard['lacks']>,
): NonNullable<Standard['lacks']> {
  const limits: Partial<Record<CriterionId, unknown>> = {
    'localizer-before-final': beforeFinal.localizer,
    'altitude-before-final': beforeFinal.altitudeFt,
    'localizer-final': final.localizer,
    'glidepath-final': final.glidepath,
    'airspeed-final': final.airspeedKt,
    minimums,
  };
  const without = CRITERION_IDS.filter((id) => limits[id] === null);
  return Object.fromEntries(without.map((id) => [id, known[id] ?? 'the standard gives no limit for it']));
}
