import type { CriterionId } from './criterion-ids.ts';
import type { Standard } from './standard.ts';

/** Why a standard has no limit for a criterion, as one clause. */
export function noLimit({ lacks }: Standard, id: CriterionId): string {
  return lacks?.[id] ?? 'the standard sets no limit for it here';
}
