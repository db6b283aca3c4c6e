import { FEET_PER_METRE } from '../units/units.ts';

/** The standard atmosphere below 11 km (ICAO Doc 7488; second-hand): temperature and pressure at sea level, lapse. */
const SEA_LEVEL_K = 288.15;
const ZERO_CELSIUS_K = 273.15;
const SEA_LEVEL_HPA = 1013.25;
const LAPSE_K_PER_M = 0.0065;
const EXPONENT = 0.190263;
/** Of density over temperature: 1 / EXPONENT − 1. */
const DENSITY_EXPONENT = 4.25588;

/** Height of a pressure in the standard atmosphere, feet: what an altimeter set to 1013.25 hPa shows. */
export function pressureAltitudeFt(pressureHpa: number): number {
  const heightM = (SEA_LEVEL_K / LAPSE_K_PER_M) * (1 - (pressureHpa / SEA_LEVEL_HPA) ** EXPONENT);
  return heightM * FEET_PER_METRE;
}

/**
 * True over indicated airspeed at an altitude in the standard atmosphere, or in air that is so many degrees warmer: one
 * over the root of relative density. Each 12 °C of warmer air make the true one 2 % larger.
 */
export function trueOverIndicated(altitudeFt: number, warmerC = 0): number {
  const temperatureRatio = standardRatio(altitudeFt);
  const asWarm = 1 + warmerC / (SEA_LEVEL_K * temperatureRatio);
  // A power by its logarithm: as exact here, to one in the last digit, and three times as fast, for every fix of an approach.
  return Math.sqrt(asWarm) * Math.exp((-DENSITY_EXPONENT / 2) * Math.log(temperatureRatio));
}

/** How much warmer air of a temperature is than the standard atmosphere at that altitude, °C; colder is negative. */
export function warmerThanStandardC(altitudeFt: number, temperatureC: number): number {
  return temperatureC + ZERO_CELSIUS_K - SEA_LEVEL_K * standardRatio(altitudeFt);
}

/** Temperature in the standard atmosphere over that at sea level. */
function standardRatio(altitudeFt: number): number {
  return 1 - (LAPSE_K_PER_M * (altitudeFt / FEET_PER_METRE)) / SEA_LEVEL_K;
}

/** Beyond this height above the aerodrome the error is that of 5,000 ft, as in the published table. */
const HIGHEST_FT = 5000;
const LAPSE_C_PER_FT = 0.00198;

/** Where an altimeter's setting is measured, and the temperature of the air there. */
export interface Aerodrome {
  readonly elevationFt: number;
  readonly temperatureC: number;
}

/**
 * Feet by which true height is below indicated height in air colder than standard, above it in warmer (negative).
 * ICAO Doc 8168 Vol I III-1-4 (second-hand; that it takes the temperature as it would be at sea level, from memory). The
 * published table of FAA AIM 7-3-1 is this for an aerodrome at sea level, rounded up, and says too much at a high one.
 *
 * @param heightFt true height above the aerodrome
 */
export function temperatureErrorFt(heightFt: number, aerodrome: Aerodrome): number {
  const ft = Math.max(0, Math.min(HIGHEST_FT, heightFt));
  const { warmest, colder } = layerOver(aerodrome);
  return (ft * colder) / (warmest - 0.5 * LAPSE_C_PER_FT * ft);
}

/** True height above an aerodrome at which an altimeter shows so many feet above it: the error's equation, solved. */
export function trueHeightFt(shownFt: number, aerodrome: Aerodrome): number {
  if (!(shownFt > 0)) return shownFt;
  const { warmest, colder } = layerOver(aerodrome);
  const half = 0.5 * LAPSE_C_PER_FT;
  const linear = warmest + colder + half * shownFt;
  const ft = (2 * shownFt * warmest) / (linear + Math.sqrt(linear * linear - 4 * half * shownFt * warmest));
  return ft <= HIGHEST_FT ? ft : shownFt - temperatureErrorFt(HIGHEST_FT, aerodrome);
}

/** Of the air over an aerodrome: its absolute temperature as the formula counts it, and how much colder than standard. */
function layerOver({ elevationFt, temperatureC }: Aerodrome): { warmest: number; colder: number } {
  const seaLevelC = temperatureC + LAPSE_C_PER_FT * elevationFt;
  return { warmest: 273 + seaLevelC - 0.5 * LAPSE_C_PER_FT * elevationFt, colder: 15 - seaLevelC };
}
