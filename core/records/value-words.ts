import { bearingWords, decimal, variationWords } from '../facility/wording.ts';
import { whole } from '../units/whole.ts';

/** Values whose names say what they are measured in: by the end of their path, how they are written, and how finely. */
const KINDS: readonly (readonly [end: RegExp, words: (value: number) => string, halfStep: number])[] = [
  [/courseMagneticDeg$/, (deg) => `${bearingWords(deg, 1)}°`, 0.5],
  [/(?:BearingDeg|courseTrueDeg)$/, (deg) => `${bearingWords(deg, 2)}°`, 0.05],
  [/VariationDeg$/, variationWords, 0.05],
  [/Deg$/, (deg) => `${decimal(deg, 2)}°`, 0.005],
  [/Ft$/, (ft) => `${Number.isInteger(ft) ? whole(ft) : decimal(ft)} ft`, 0.5],
  [/MHz$/, (mhz) => `${mhz.toFixed(2)} MHz`, 0.005],
  [/Nm$/, (nm) => `${decimal(nm, 2)} NM`, 0.05],
];

/** "6,500 ft", "046.40°"; texts as they are. */
export function valueWords(path: string, value: string | number): string {
  if (typeof value === 'string') return value;
  return KINDS.find(([end]) => end.test(path))?.[1](value) ?? String(value);
}

/** Half of the step that such a value is published in (from memory): nothing finer tells two sources apart. */
export function halfStepOf(path: string): number {
  return KINDS.find(([end]) => end.test(path))?.[2] ?? 0;
}
