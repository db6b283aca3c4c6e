import type { Facility } from '../facility/facility-schema.ts';
import type { Issue } from '../issue/issue.ts';

type Partly<T> = T extends object ? { readonly [K in keyof T]?: Partly<T[K]> } : T;

/** A facility as far as a source tells of it. */
export type PartOfFacility = Partly<Facility>;

/** What a source other than the user's own hand says of a facility. */
export interface Drafted {
  /** As the facility file has it, without anything that the source does not say: it need not be complete. */
  readonly facility: PartOfFacility;
  /** From where each value is, in words for the user, by its path in the file: `runway.threshold.latDeg`. */
  readonly origins: Readonly<Record<string, string>>;
  /** What the user should know of it, each with a code. */
  readonly issues: readonly Issue[];
}
