import type { Facility } from '../facility/facility-schema.ts';
import type { Issue } from '../issue/issue.ts';

type Partly<T> = T extends object ? { readonly [K in keyof T]?: Partly<T[K]> } : T;

/** A facility as far as a source tells of it. */
export type PartOfFacility = Partly<Facility>;

/** Feet down the runway and across it, where a position is known better one way than the other. */
export interface AlongAndAcross {
  readonly alongFt: number;
  readonly acrossFt: number;
}

/** Of a draft from a landing: which log that was, and the paths of the values that have to be confirmed. */
export interface DraftedLanding {
  readonly logSha256: string;
  readonly unconfirmed: readonly string[];
}

/** What a source other than the user's own hand says of a facility. */
export interface Drafted {
  /** As the facility file has it, without anything that the source does not say: it need not be complete. */
  readonly facility: PartOfFacility;
  /** From where each value is, in words for the user, by its path in the file: `runway.threshold.latDeg`. */
  readonly origins: Readonly<Record<string, string>>;
  /**
   * How far values may be off as far as their source tells: by the path of the value, in its unit, and of positions in
   * feet by the path of the place (`runway.threshold`). What is not in it is as fine as published values are.
   */
  readonly mayBeOff?: Readonly<Record<string, number | AlongAndAcross>>;
  /** The AIRAC cycle of the official records that values of it are from. */
  readonly cycle?: string;
  /** Where values of it are from a landing. */
  readonly landing?: DraftedLanding;
  /** What the user should know of it, each with a code. */
  readonly issues: readonly Issue[];
}
