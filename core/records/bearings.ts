import { wrap360 } from '../units/units.ts';

/** A bearing as a record has it: magnetic by the declination that the facility was assigned, or true. */
export interface RecordBearing {
  readonly deg: number;
  readonly isTrue: boolean;
}

/** An assigned declination, east positive; a facility that is aligned to true north has none. */
export type RecordVariation = { readonly eastDeg: number } | 'true-north';

/** `1725` is 172.5 magnetic, `172T` is 172 true (ARINC 424 5.26, 5.47, 5.58). Null for anything else. */
export function bearingOf(text: string): RecordBearing | null {
  if (/^\d{4}$/.test(text)) return within({ deg: Number(text) / 10, isTrue: false });
  if (/^\d{3}T$/.test(text)) return within({ deg: Number(text.slice(0, 3)), isTrue: true });
  return null;
}

function within(bearing: RecordBearing): RecordBearing | null {
  return bearing.deg <= 360 ? bearing : null;
}

/** `E0080` is 8.0 east, `T0000` says that true north is used (ARINC 424 5.39, 5.66). Null for anything else. */
export function variationOf(text: string): RecordVariation | null {
  if (/^T(?:0{4})?$/.test(text)) return 'true-north';
  if (!/^[EW]\d{4}$/.test(text)) return null;
  const deg = Number(text.slice(1)) / 10;
  if (deg > 180) return null;
  return { eastDeg: text.startsWith('W') && deg !== 0 ? -deg : deg };
}

/** The true bearing; null where it is magnetic and no declination is known. */
export function trueOf(bearing: RecordBearing, variation: RecordVariation | null): number | null {
  if (bearing.isTrue || variation === 'true-north') return wrap360(bearing.deg);
  return variation === null ? null : wrap360(bearing.deg + variation.eastDeg);
}
