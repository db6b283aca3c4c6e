import type { Issue, Outcome } from '../issue/issue.ts';
import { wordsOf } from './header-tokens.ts';
import { logIssue, logRefused } from './log-issue.ts';
import type { ColumnRole, LogSettings } from './log.ts';
import { unitsOffered, unitSuits } from './offered-units.ts';
import { isQuantity, QUANTITY_RULES } from './quantity-rules.ts';
import { UNITS, unitOf } from './unit-words.ts';
import type { Unit } from './unit-words.ts';

/** Names of all units that can be stated. Any spelling that a header may have will do as well. */
export const UNIT_NAMES: readonly string[] = UNITS.flatMap(({ name, dimension }) =>
  dimension === 'other' ? [] : name,
);

/** The unit that a user's words name; undefined when they name none. */
export function unitInWords(words: string): Unit | undefined {
  const unit = unitOf(wordsOf(words).join(' '));
  return unit?.dimension === 'other' ? undefined : unit;
}

/** Refuses settings that name a unit which is none; null when all are known. */
export function unknownUnit({ units = {} }: LogSettings): Outcome<never> | null {
  for (const [header, words] of Object.entries(units)) {
    if (unitInWords(words) === undefined)
      return logRefused(
        'unit-unknown',
        `"${words}", stated for column "${header}", is no unit that is known.`,
        {
          tip: `Units are ${UNIT_NAMES.join(', ')}.`,
        },
      );
  }
  return null;
}

/** A column for which a unit was stated. */
interface Stated {
  readonly header: string;
  readonly role: ColumnRole | null;
  readonly unit: Unit;
}

/** Refuses a unit that a column cannot be in; null when all can. */
export function unfitUnit(name: string, stated: readonly Stated[]): Outcome<never> | null {
  for (const { header, role, unit } of stated) {
    if (role === null || unitSuits(unit, role)) continue;
    const label = isQuantity(role) ? QUANTITY_RULES[role].label : 'a time';
    const offered = unitsOffered(role);
    return logRefused(
      'unit-unfit',
      `${name}: column "${header}" (${label}) cannot be in ${unit.name}, as was stated.`,
      { tip: offered.length === 0 ? 'It has no unit.' : `Units of it are ${offered.join(', ')}.` },
    );
  }
  return null;
}

/** Says which units were stated for nothing: `read` are the headers of columns that are read in a unit. */
export function unusedUnits({ units = {} }: LogSettings, read: ReadonlySet<string>): Issue[] {
  return Object.entries(units).flatMap(([header, words]) =>
    read.has(header)
      ? []
      : logIssue(
          'unit-unused',
          `The unit ${unitInWords(words)!.name} was stated for column "${header}". That changed nothing: no column of that name is read in a unit.`,
          { tip: 'See what the columns are called, and what each is taken for.' },
        ),
  );
}
