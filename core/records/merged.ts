import { issue, type Issue } from '../issue/issue.ts';
import { differencesOf, SOURCES, type SourceNames } from './differences.ts';
import type { Drafted } from './drafted.ts';
import { draftedFrom, leavesOf } from './leaves.ts';
import { mergedOrigin } from './merged-origin.ts';
import { positionIn, unitOf } from './places.ts';

/** Of which source a value is taken, by the path of a difference. */
export type Choices = Readonly<Record<string, 'one' | 'other'>>;

/**
 * One draft of two: every value that either says, with its origin. Where both do, the chosen one, and without a choice
 * the first; a latitude is never taken without its longitude. What differs and was not chosen is told.
 */
export function merged(
  one: Drafted,
  other: Drafted,
  choices: Choices,
  names: SourceNames = SOURCES,
): Drafted {
  const sides = { one: bySource(one), other: bySource(other) };
  const chosen = [...new Set([...sides.one.keys(), ...sides.other.keys()])].map((unit) => {
    const choice = choices[unit] ?? 'one';
    const side = sides[choice].has(unit) ? choice : choice === 'one' ? 'other' : 'one';
    return { unit, side };
  });
  const leaves = chosen.flatMap(({ unit, side }) => sides[side].get(unit)!);
  const takenOf = (asked: keyof typeof sides) =>
    chosen.flatMap(({ unit, side }) => (side === asked ? sides[side].get(unit)! : []));
  const offs = chosen.flatMap(({ unit, side }) => {
    const off = { one, other }[side].mayBeOff?.[unit];
    return off === undefined ? [] : [[unit, off] as const];
  });
  const open = differencesOf(one, other, names).filter(({ path }) => choices[path] === undefined);
  const drafted = draftedFrom(leaves, {
    issues: [
      ...distinct([...one.issues, ...other.issues]),
      ...open.map(({ sentence }) => left(sentence, names)),
    ],
    mayBeOff: Object.fromEntries(offs),
  });
  const origin = mergedOrigin([
    { draft: one, leaves: takenOf('one') },
    { draft: other, leaves: takenOf('other') },
  ]);
  return { ...drafted, ...origin };
}

/** The values of a draft by what is chosen together. Half a position is none. */
function bySource(draft: Drafted): Map<string, ReturnType<typeof leavesOf>> {
  const leaves = leavesOf(draft);
  const units = new Map<string, ReturnType<typeof leavesOf>>();
  for (const leaf of leaves) {
    const unit = unitOf(leaf.path);
    if (unit !== leaf.path && positionIn(leaves, unit) === null) continue;
    units.set(unit, [...(units.get(unit) ?? []), leaf]);
  }
  return units;
}

function left(sentence: string, { one }: SourceNames): Issue {
  return issue('caution', 'sources-differ', `${sentence} ${one[0]!.toUpperCase()}${one.slice(1)} holds.`, {
    tip: 'Choose one of them by the official publication of the aerodrome.',
  });
}

function distinct(issues: readonly Issue[]): Issue[] {
  const seen = new Map(issues.map((one) => [`${one.code}\n${one.message}`, one]));
  return [...seen.values()];
}
