import type { Issue } from '../issue/issue.ts';
import type { CsvColumn } from './choose-columns.ts';
import { logIssue } from './log-issue.ts';
import type { AltitudeKind, Log, LogSettings, Quantity } from './log.ts';

/** What an altitude of no named kind is, once the user has said its kind. */
export const QUANTITY_OF_KIND: Readonly<Record<AltitudeKind, Quantity>> = {
  geometric: 'altitudeGeometricFt',
  ellipsoid: 'altitudeEllipsoidFt',
  indicated: 'altitudeIndicatedFt',
  pressure: 'altitudePressureFt',
};

const KIND_WORDS: Readonly<Record<AltitudeKind, string>> = {
  geometric: 'above sea level by satellite',
  ellipsoid: 'above the ellipsoid',
  indicated: "the altimeter's, its setting applied",
  pressure: "the altimeter's at 1013.25 hPa",
};

/**
 * Takes the column that says no more than "altitude" for the kind that the user states. A column that names that kind
 * itself is the better witness and stays.
 */
export function stateAltitudeKind(
  columns: readonly CsvColumn[],
  { altitudeKind }: LogSettings,
): readonly CsvColumn[] {
  if (altitudeKind === undefined) return columns;
  const stated = QUANTITY_OF_KIND[altitudeKind];
  if (columns.some(({ role }) => role === stated)) return columns;
  return columns.map((column) =>
    column.role === 'altitudeUnnamedFt'
      ? { ...column, role: stated, confidence: 1, why: 'the user said so' }
      : column,
  );
}

/** Says when a stated kind changed nothing: `saidOf` are the quantities that were taken on the user's word. */
export function kindIssues(
  { altitudeKind }: LogSettings,
  saidOf: readonly Quantity[],
  values: Log['values'],
): Issue[] {
  if (altitudeKind === undefined) return [];
  const stated = QUANTITY_OF_KIND[altitudeKind];
  if (saidOf.includes(stated) && values[stated] !== undefined) return [];
  const why =
    values[stated] === undefined
      ? 'no altitude of this log leaves its kind open'
      : 'a column of this log says that of itself';
  const message = `The altitude was stated to be ${KIND_WORDS[altitudeKind]}. That changed nothing: ${why}.`;
  return [
    logIssue('altitude-kind-unused', message, {
      tip: 'To take a column for another kind than its header says, name the column.',
    }),
  ];
}
