import type { JsonPath } from '../json/json-text.ts';
import type { JsonProblem } from '../json/problem.ts';
import { CRITERION_IDS } from './criterion-ids.ts';
import { bandProblem } from './limit-schema.ts';
import type { OwnQuantity } from './standard.ts';
import type { StandardFile } from './standard-schema.ts';
import { SHIPPED } from './standards.ts';

/** What such a value can be at all on an approach (our own choice). */
const OWN_RANGE: Record<OwnQuantity, { readonly min: number; readonly max: number; readonly unit: string }> =
  {
    groundspeedKt: { min: 0, max: 400, unit: 'kt' },
    verticalSpeedFpm: { min: -6000, max: 6000, unit: 'ft/min' },
    bankDeg: { min: -90, max: 90, unit: 'degrees' },
    pitchDeg: { min: -90, max: 90, unit: 'degrees' },
  };

/** What the values of a standard file, each possible on its own, cannot be together. */
export function impossibleStandard(file: StandardFile): JsonProblem[] {
  return [...takenIds(file), ...basisWithoutLimit(file), ...impossibleMinimums(file), ...impossibleOwn(file)];
}

function impossible(path: JsonPath, says: string, tip: string | null = null): JsonProblem {
  return { code: 'standard-impossible-value', path, says, tip };
}

function taken(path: JsonPath, id: string, by: string, tip: string): JsonProblem {
  return { code: 'standard-id-taken', path, says: `is "${id}": that is the id of ${by}`, tip };
}

const isShipped = (id: string): boolean => SHIPPED.some((standard) => standard.id === id);

function takenIds({ id, own = [] }: StandardFile): JsonProblem[] {
  const problems: JsonProblem[] = [];
  if (isShipped(id))
    problems.push(
      taken(
        ['id'],
        id,
        'a standard that comes with the program',
        `To build on it, give "basedOn": "${id}" and an id of your own.`,
      ),
    );
  for (const [index, { id: ownId }] of own.entries()) {
    const by = isShipped(ownId)
      ? 'a standard that comes with the program'
      : (CRITERION_IDS as readonly string[]).includes(ownId)
        ? 'a criterion that every standard has'
        : own.slice(0, index).some((earlier) => earlier.id === ownId)
          ? 'a criterion above'
          : null;
    if (by !== null) problems.push(taken(['own', index, 'id'], ownId, by, 'Choose another id.'));
  }
  return problems;
}

function basisWithoutLimit({ final, gates }: StandardFile): JsonProblem[] {
  const groups = { final, gates };
  return (['final', 'gates'] as const).flatMap((name) => {
    const { airspeedBasis, airspeedKt } = groups[name] ?? {};
    if (airspeedBasis === undefined || airspeedKt !== undefined) return [];
    const says = `is "${airspeedBasis}": that says what a limit counts from, and no limit stands beside it`;
    return [impossible([name, 'airspeedBasis'], says, `Give ${name}.airspeedKt too.`)];
  });
}

function impossibleMinimums({ minimums }: StandardFile): JsonProblem[] {
  if (minimums === undefined) return [];
  const { startWithinFt, startWithinS } = minimums;
  if ((startWithinFt === undefined) === (startWithinS === undefined)) {
    const has = startWithinFt === undefined ? 'neither' : 'both';
    return [
      impossible(
        ['minimums'],
        `has ${has} of startWithinFt and startWithinS: a missed approach is judged by one of them`,
        'Give one of them, or leave minimums out.',
      ),
    ];
  }
  if (startWithinFt === undefined || startWithinFt.upper !== undefined) return [];
  const says = 'has no upper: a start far above decision altitude is no missed approach at minimums';
  return [impossible(['minimums', 'startWithinFt'], says)];
}

function impossibleOwn({ own = [] }: StandardFile): JsonProblem[] {
  return own.flatMap((criterion, index) => {
    const { min, max, unit } = OWN_RANGE[criterion.quantity];
    const beyond = (['lower', 'upper'] as const).flatMap((side) => {
      const value = criterion[side];
      if (value === undefined || (value >= min && value <= max)) return [];
      const says = `is ${value}: ${criterion.quantity} lies between ${min} and ${max} ${unit}`;
      return [impossible(['own', index, side], says)];
    });
    const problem = bandProblem(criterion);
    return problem === null ? beyond : [...beyond, impossible(['own', index], problem)];
  });
}
