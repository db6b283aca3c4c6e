import { HECTOPASCALS_PER_INCH_OF_MERCURY, METRES_PER_FOOT, METRES_PER_NM } from '../units/units.ts';

export type Dimension =
  | 'length'
  | 'speed'
  | 'angle'
  | 'pressure'
  | 'temperature'
  | 'percent'
  | 'rotation'
  | 'time'
  | 'needle'
  | 'other';

export interface Unit {
  readonly name: string;
  readonly dimension: Dimension;
  /** Base units in one of it: metres, m/s, degrees, hPa, °C, percent, 1/min, seconds, full scales. */
  readonly factor: number;
  /** Added before the factor is applied (temperatures only). */
  readonly shift: number;
  /** Spellings as `header-tokens.ts` leaves them: lower case, no accents, no signs, words joined by a blank. */
  readonly words: readonly string[];
}

const unit = (name: string, dimension: Dimension, factor: number, words: string[], shift = 0): Unit => ({
  name,
  dimension,
  factor,
  shift,
  words,
});

/** The most words a unit has. */
export const UNIT_WORDS_MAX = 3;

/**
 * Units as logs write them; a new spelling is a new word here. Factors are definitions (ICAO Annex 5, 4th ed.;
 * from memory). Needle units: full scale is 0.155 DDM on the localizer and 0.175 on the glidepath, 150 µA on
 * both (14 CFR 171.253 and 171.267, published; µA flight-inspection practice, second-hand).
 */
export const UNITS: readonly Unit[] = [
  unit('ft', 'length', METRES_PER_FOOT, ['ft', 'feet', 'foot', 'fuss', 'pied', 'pieds', 'pie', 'pies']),
  unit('m', 'length', 1, ['m', 'meter', 'meters', 'metre', 'metres', 'metro', 'metros', 'mtr', 'mt', 'mts']),
  unit('km', 'length', 1000, ['km', 'kilometer', 'kilometers', 'kilometres']),
  unit('NM', 'length', METRES_PER_NM, ['nm', 'nmi', 'nautical miles']),
  unit('mi', 'length', 1609.344, ['mi', 'sm', 'miles']),
  unit('cm', 'length', 0.01, ['cm']),
  unit('mm', 'length', 0.001, ['mm']),
  unit('kt', 'speed', METRES_PER_NM / 3600, [
    'kt',
    'kts',
    'kn',
    'knot',
    'knots',
    'knoten',
    'noeuds',
    'nudos',
    'nm h',
  ]),
  unit('km/h', 'speed', 1 / 3.6, ['km h', 'kmh', 'kph', 'kmph', 'km hr']),
  unit('mph', 'speed', 1609.344 / 3600, ['mph', 'mi h']),
  unit('m/s', 'speed', 1, ['m s', 'mps', 'ms 1', 'm sec', 'meters per second']),
  unit('ft/min', 'speed', METRES_PER_FOOT / 60, [
    'ft min',
    'fpm',
    'ftmin',
    'ft m',
    'feet min',
    'feet per minute',
  ]),
  unit('ft/s', 'speed', METRES_PER_FOOT, ['ft s', 'fps']),
  unit('deg', 'angle', 1, ['deg', 'degs', 'degree', 'degrees', 'grad', 'grados', 'degres', 'dd', 'dms']),
  unit('rad', 'angle', 180 / Math.PI, ['rad', 'radian', 'radians']),
  unit('1e-7 deg', 'angle', 1e-7, ['1e 7 deg', 'dege7', 'deg e7', 'deg 1e7', 'e7', '1e7']),
  unit('semicircles', 'angle', 180 / 2 ** 31, ['semicircle', 'semicircles']),
  unit('hPa', 'pressure', 1, ['hpa', 'h pa', 'mb', 'mbar', 'm bar', 'millibar']),
  unit('Pa', 'pressure', 0.01, ['pa', 'pascal']),
  unit('inHg', 'pressure', HECTOPASCALS_PER_INCH_OF_MERCURY, ['inhg', 'in hg', 'hg', 'inch', 'inches', 'in']),
  unit('psi', 'other', 1, ['psi']),
  unit('°C', 'temperature', 1, ['degc', 'deg c', 'c', 'celsius']),
  unit('°F', 'temperature', 5 / 9, ['degf', 'deg f', 'f', 'fahrenheit'], -32),
  unit('K', 'temperature', 1, ['k', 'kelvin'], -273.15),
  unit('%', 'percent', 1, ['percent', 'pct', 'prozent']),
  unit('rpm', 'rotation', 1, ['rpm', '1 min', 'u min', 'tr min']),
  unit('s', 'time', 1, ['s', 'sec', 'secs', 'second', 'seconds', 'sek', 'sekunden', 'secondes', 'segundos']),
  unit('ms', 'time', 1e-3, ['ms', 'msec', 'millis', 'milliseconds']),
  unit('µs', 'time', 1e-6, ['us', 'usec', 'micros', 'microseconds']),
  unit('ns', 'time', 1e-9, ['ns', 'nanos', 'nanoseconds']),
  unit('min', 'time', 60, ['min', 'minutes']),
  unit('full scale', 'needle', 1, ['fsd', 'full scale', 'fs', 'fullscale']),
  unit('dots of 2', 'needle', 1 / 2, ['2 dots', '2 dot', 'dots 2', 'dots of 2']),
  unit('dots of 5', 'needle', 1 / 5, ['5 dots', '5 dot', 'dots 5', 'dots of 5']),
  unit('dots', 'needle', NaN, ['dot', 'dots', 'punkte', 'points', 'puntos']),
  unit('DDM', 'needle', NaN, ['ddm']),
  unit('µA', 'needle', 1 / 150, ['ua', 'u a', 'microamp', 'microamps', 'microampere']),
  unit('other', 'other', 1, [
    'g',
    'v',
    'volts',
    'volt',
    'amps',
    'amp',
    'gal',
    'gals',
    'gph',
    'l',
    'l h',
    'mhz',
    'khz',
    'k hz',
    'hz',
    'bool',
    'enum',
    'lbs',
    'kg',
    'db',
  ]),
];

const BY_WORDS = new Map(UNITS.flatMap((unit) => unit.words.map((words) => [words, unit] as const)));

/** The unit that these words name, or undefined. */
export function unitOf(words: string): Unit | undefined {
  return BY_WORDS.get(words);
}
