import type { Sheet, SheetBand } from '../../core/sheet/sheet.ts';
import { partsWhere, runsIn, withCrossings, type Row } from './rows.ts';
import type { Strip } from './strips.ts';

/** One side of a band, and what of the line was beyond it. */
export interface Beyond {
  readonly limit: number;
  readonly outside: readonly (readonly Row[])[];
  /** Where the 95 % band leaves open on which side of the limit it was. */
  readonly open: readonly (readonly Row[])[];
}

/** A crossing that was reckoned stands on the limit, but for rounding; in the criterion's unit. */
const TOUCHING = 1e-9;

/**
 * What of a strip's line was beyond a band, in the unit that the criterion is told in: its line is straight between
 * fixes there, and in feet it is not. Only what was counted as outside is outside; what the debrief left out, as the
 * beginning of a circle to another runway, is neither that nor open.
 */
export function beyondBand({ columns }: Sheet, { judged }: Strip, band: SheetBand): Beyond[] {
  const { excursions } = band;
  const sides = [
    { limit: band.lower, sign: -1 },
    { limit: band.upper, sign: 1 },
  ];
  return sides.flatMap(({ limit, sign }) => {
    if (limit === null) return [];
    const off = (row: Row) => sign * (judged.valueOf(row) - limit);
    const within = (row: Row) => off(row) - judged.halfOf(row);
    const beyond = (row: Row) => off(row) + judged.halfOf(row);
    const crossed = (run: readonly Row[]) =>
      [off, within, beyond].reduce<readonly Row[]>(
        (rows, difference) => withCrossings(rows, difference),
        run,
      );
    const runs = runsIn(columns, band, judged.valueOf).map(crossed);
    const counted = excursions?.flatMap((span) =>
      runsIn(columns, cut(span, band), judged.valueOf).map(crossed),
    );
    const spells = runs.flatMap((run) => partsWhere(run, (row) => beyond(row) >= -TOUCHING));
    return {
      limit,
      outside: (counted ?? runs).flatMap((run) => partsWhere(run, (row) => off(row) >= -TOUCHING)),
      open: spells
        .filter((spell) => excursions === null || !isLeftOut(spell, off, counted ?? []))
        .flatMap((spell) => partsWhere(spell, (row) => within(row) <= TOUCHING && judged.halfOf(row) > 0)),
    };
  });
}

/** Beyond the limit, and in no excursion. */
function isLeftOut(
  spell: readonly Row[],
  off: (row: Row) => number,
  counted: readonly (readonly Row[])[],
): boolean {
  if (!spell.some((row) => off(row) > TOUCHING)) return false;
  const [from, to] = [spell[0]!, spell[spell.length - 1]!];
  return !counted.some((run) => run[0]! <= to && run[run.length - 1]! >= from);
}

function cut<T extends { readonly startS: number; readonly endS: number }>(span: T, to: T | SheetBand) {
  return { startS: Math.max(span.startS, to.startS), endS: Math.min(span.endS, to.endS) };
}
