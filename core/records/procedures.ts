import { decodeLeg, type LegRecord } from './leg-record.ts';

/** One approach procedure down a localizer, its legs in the order in which they are flown. */
export interface Procedure {
  /** `I17R`, `I04LZ`. */
  readonly ident: string;
  /** To the missed approach point, that included. */
  readonly final: readonly LegRecord[];
  readonly missed: readonly LegRecord[];
}

/** The procedures that are flown on a localizer: those with a leg to the fix or to the threshold that names it. */
export function proceduresOf(lines: readonly string[], localizer: string): Procedure[] {
  const byIdent = new Map<string, LegRecord[]>();
  for (const line of lines) {
    const leg = decodeLeg(line);
    if (!leg.ok) continue;
    const { procedure } = leg.value;
    const known = byIdent.get(procedure);
    if (known === undefined) byIdent.set(procedure, [leg.value]);
    else known.push(leg.value);
  }
  return [...byIdent]
    .map(([ident, legs]) => procedureOf(ident, legs))
    .filter(({ final }) =>
      final.some(
        (leg) =>
          leg.navaid === localizer &&
          leg.navaidSection === 'PI' &&
          (leg.isFinalApproachFix || leg.isMissedApproachPoint),
      ),
    );
}

function procedureOf(ident: string, legs: LegRecord[]): Procedure {
  const flown = legs.toSorted((a, b) => a.sequence - b.sequence);
  const begins = flown.findIndex(({ beginsMissedApproach }) => beginsMissedApproach);
  const until = begins === -1 ? flown.length : begins;
  return { ident, final: flown.slice(0, until), missed: flown.slice(until) };
}

/** The leg that ends at the final approach fix; undefined where none is marked so. */
export function finalFixLeg({ final }: Procedure): LegRecord | undefined {
  return final.find(({ isFinalApproachFix, fix }) => isFinalApproachFix && fix !== null);
}

/** The leg that ends at this runway's threshold; undefined where the procedure leads elsewhere. */
export function thresholdLeg({ final }: Procedure, runway: string): LegRecord | undefined {
  return final.find(({ fix }) => fix !== null && fix.section === 'PG' && fix.ident === runway);
}

/** The legs between final approach fix and threshold added up; null where one has no length. */
export function legsFromFixNm(procedure: Procedure, runway: string): number | null {
  const { final } = procedure;
  const from = final.findIndex((leg) => leg === finalFixLeg(procedure));
  const to = final.findIndex((leg) => leg === thresholdLeg(procedure, runway));
  if (from === -1 || to <= from) return null;
  const legs = final.slice(from + 1, to + 1);
  if (legs.some(({ distanceNm }) => distanceNm === null)) return null;
  // Tenths, added as such.
  return legs.reduce((sum, { distanceNm }) => sum + Math.round(distanceNm! * 10), 0) / 10;
}

/** The altitude of the hold that ends the missed approach; null where it ends otherwise: then it is not plain. */
export function missedApproachAltitudeFt({ missed }: Procedure): number | null {
  const last = missed.at(-1);
  const isHold = last !== undefined && ['HM', 'HA', 'HF'].includes(last.pathTerminator);
  const isAtOrAbove = isHold && ['', '+', '@'].includes(last.altitudeDescription);
  return isAtOrAbove ? last.altitudeFt : null;
}
