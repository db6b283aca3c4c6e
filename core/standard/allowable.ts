import { TIMED_TITLES, type CriterionId } from './criterion-ids.ts';
import type { CriterionUnit } from './judgement.ts';
import { OWN_UNITS } from './own-criteria.ts';
import type { Limit, Standard } from './standard.ts';

type Unit = CriterionUnit & string;

/** A criterion on which more room can be allowed. */
export interface Allowable {
  readonly id: string;
  readonly title: string;
  /** What the room is told in. */
  readonly unit: Unit;
}

/** Those of a standard that have a limit told in time: of a gate or of minimums there is no more room to give. */
export function allowableOf({ beforeFinal, final, own }: Standard): Allowable[] {
  const timed: readonly (readonly [keyof typeof TIMED_TITLES & CriterionId, Limit | null, Unit])[] = [
    ['localizer-before-final', beforeFinal.localizer, 'full scale'],
    ['altitude-before-final', beforeFinal.altitudeFt, 'ft'],
    ['localizer-final', final.localizer, 'full scale'],
    ['glidepath-final', final.glidepath, 'full scale'],
    ['airspeed-final', final.airspeedKt, 'kt'],
  ];
  return [
    ...timed.flatMap(([id, limit, unit]) => (limit ? [{ id, title: TIMED_TITLES[id], unit }] : [])),
    ...own.map(({ id, title, quantity }) => ({ id, title, unit: OWN_UNITS[quantity] })),
  ];
}
