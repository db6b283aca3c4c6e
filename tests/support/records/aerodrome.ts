import type { FacilityFile } from '../flight/facility-file.ts';

/** An invented aerodrome as official records would have it. */
export interface Aerodrome {
  /** Four letters; no real place begins with X. */
  readonly ident: string;
  readonly name: string;
  readonly facility: FacilityFile;
  /** False: the localizer has no glideslope. */
  readonly hasGlideslope: boolean;
  /** From the end of the pavement to the landing threshold, at either end. */
  readonly displacedFt: { readonly here: number; readonly opposite: number };
  readonly hasDme: boolean;
  /** Where the missed approach ends: a waypoint that stands elsewhere in the file, for it is an enroute one. */
  readonly holdFix: { readonly name: string; readonly latDeg: number; readonly lonDeg: number };
}
