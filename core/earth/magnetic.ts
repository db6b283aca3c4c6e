import * as library from 'geomagnetism';
import { DEGREES_PER_RADIAN } from '../units/units.ts';
import type { Position } from './geodesic.ts';

// The library is CommonJS: its exports arrive as the namespace's default, which its types do not say.
const geomagnetism = (library as unknown as { default: typeof library }).default;

/** First years of the models that the published test values cover; each holds for five years. */
const MODEL_YEARS = [2025, 2020] as const;
const YEARS_VALID = 5;
/** Both sampled years lie well inside the dates between which the library hands out this model. */
const SAMPLE_SPAN_YEARS = 4;

/**
 * Magnetic declination in degrees, east positive, by the World Magnetic Model (WMM2020 and WMM2025).
 * Null outside 2020.0 to 2030.0: a model outside its five years is a guess.
 *
 * The library chooses a model by its release date, some weeks before the year it is made for, and none in the
 * last weeks of the five. So the model is fixed here, and read in two years of which it is certain: the field's
 * components are linear in time (WMM technical report, secular variation), so a straight line through two
 * readings is the model itself on any day.
 *
 * @param heightM height above the ellipsoid in metres; above the sea will do (100 m move it by 0.001 degrees)
 */
export function magneticDeclinationDeg(
  position: Position,
  heightM: number,
  decimalYear: number,
): number | null {
  const modelYear = MODEL_YEARS.find((year) => decimalYear >= year && decimalYear <= year + YEARS_VALID);
  if (modelYear === undefined) return null;
  const first = fieldOnNewYear(position, heightM, modelYear);
  const last = fieldOnNewYear(position, heightM, modelYear + SAMPLE_SPAN_YEARS);
  const share = (decimalYear - modelYear) / SAMPLE_SPAN_YEARS;
  const north = first.x + share * (last.x - first.x);
  const east = first.y + share * (last.y - first.y);
  return Math.atan2(east, north) * DEGREES_PER_RADIAN;
}

/** Always with a date: without one the library would ask the machine's clock. */
function fieldOnNewYear({ latDeg, lonDeg }: Position, heightM: number, year: number) {
  return geomagnetism.model(new Date(Date.UTC(year, 0, 1))).point([latDeg, lonDeg, heightM / 1000]);
}

/** A moment, in seconds since 1970-01-01 UTC, as a year with its share that has gone by: 2024.5 is 2 July 2024. */
export function decimalYear(timeS: number): number {
  const year = new Date(timeS * 1000).getUTCFullYear();
  const startS = Date.UTC(year, 0, 1) / 1000;
  const endS = Date.UTC(year + 1, 0, 1) / 1000;
  return year + (timeS - startS) / (endS - startS);
}
