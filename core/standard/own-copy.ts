import { STANDARD_FORMAT } from './standard-schema.ts';
import type { Limit, MinimumsRule, Standard } from './standard.ts';

/**
 * A shipped standard as the file of a user's own (`halfdot-standard/1`), every limit written out so that it can be
 * changed. A limit that holds at the gates because it holds on final is left out there: changed on final, it changes
 * at the gates too.
 */
export function ownCopy(shipped: Standard, taken: readonly Pick<Standard, 'id' | 'title'>[]): string {
  const { beforeFinal, final, gates } = shipped;
  const isAsOnFinal = (limit: Limit | null, onFinal: Limit | null) =>
    limit?.lower === onFinal?.lower && limit?.upper === onFinal?.upper;
  const isSameSpeed = isAsOnFinal(gates.airspeed, final.airspeedKt) && gates.speedBasis === final.speedBasis;
  const file = {
    format: STANDARD_FORMAT,
    ...freeName(shipped, taken),
    source: `Our own, after ${shipped.source}`,
    basedOn: shipped.id,
    beforeFinal: filled({
      localizerFullScale: band(beforeFinal.localizer),
      altitudeFt: band(beforeFinal.altitudeFt),
      airspeedKt: band(beforeFinal.airspeedKt),
    }),
    final: filled({
      localizerFullScale: band(final.localizer),
      glidepathFullScale: band(final.glidepath),
      airspeedKt: band(final.airspeedKt),
      airspeedBasis: final.airspeedKt ? final.speedBasis : undefined,
      airspeedAsymmetricKt: band(final.airspeedAsymmetricKt),
      countsFrom: final.countsFrom,
    }),
    gates: filled({
      datum: gates.datum,
      localizerFullScale: isAsOnFinal(gates.localizer, final.localizer) ? undefined : band(gates.localizer),
      glidepathFullScale: isAsOnFinal(gates.glidepath, final.glidepath) ? undefined : band(gates.glidepath),
      airspeedKt: isSameSpeed ? undefined : band(gates.airspeed),
      airspeedBasis: isSameSpeed || !gates.airspeed ? undefined : gates.speedBasis,
      sinkFpm: gates.sinkFpm?.upper ?? undefined,
      bankDeg: gates.bankDeg?.upper ?? undefined,
    }),
    minimums: minimumsOf(shipped.minimums),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** A limit as a file has it: one number where it is as far to both sides. */
function band(limit: Limit | null): number | { lower?: number; upper?: number } | undefined {
  if (limit === null) return undefined;
  const { lower, upper } = limit;
  if (lower !== null && upper !== null && lower === -upper) return upper;
  return { ...(lower !== null && { lower }), ...(upper !== null && { upper }) };
}

function minimumsOf(rule: MinimumsRule | null): object | undefined {
  if (rule === null) return undefined;
  return rule.kind === 'start-within-time'
    ? { startWithinS: rule.seconds }
    : { startWithinFt: band(rule.limit) };
}

/** A group of a file; left out where nothing of it is given. */
function filled(group: Readonly<Record<string, unknown>>): object | undefined {
  return Object.values(group).some((value) => value !== undefined) ? group : undefined;
}

/** An id and a title that none of the user's own has yet: from the second on they are numbered. */
function freeName(
  { id, title }: Standard,
  taken: readonly Pick<Standard, 'id' | 'title'>[],
): Pick<Standard, 'id' | 'title'> {
  for (let count = 1; ; count++) {
    const own = {
      id: count === 1 ? `own-${id}` : `own-${id}-${count}`,
      title: count === 1 ? `Own: ${title}` : `Own ${count}: ${title}`,
    };
    if (!taken.some((other) => other.id === own.id || other.title === own.title)) return own;
  }
}
