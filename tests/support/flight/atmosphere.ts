/**
 * The air that a flight is flown in: temperature, true and indicated airspeed, and what an altimeter makes of it.
 * Standard atmosphere: ICAO Doc 7488 (15 °C, 6.5 °C/km; second-hand).
 */
export interface Atmosphere {
  /** Degrees above the standard atmosphere at every height. */
  readonly isaDeviationC: number;
  /** Elevation at which the altimeter setting was measured; an altimeter is right there, at any temperature. */
  readonly stationElevationFt: number;
  /** Feet by which the indicated altitude is high because of a wrong altimeter setting. */
  readonly settingErrorFt: number;
  readonly altimeterSettingHpa: number;
}

const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_FT = 0.0019812;
const STANDARD_HPA = 1013.25;
/** 27.31 ft/hPa near sea level (computed from the standard atmosphere). */
const FEET_PER_HPA = 27.31;

export const STANDARD_ATMOSPHERE: Atmosphere = {
  isaDeviationC: 0,
  stationElevationFt: 0,
  settingErrorFt: 0,
  altimeterSettingHpa: STANDARD_HPA,
};

export function temperatureC(air: Atmosphere, heightFt: number): number {
  return SEA_LEVEL_K - LAPSE_K_PER_FT * heightFt + air.isaDeviationC - 273.15;
}

/** True over indicated airspeed: the square root of the density ratio. */
export function trueOverIndicated(air: Atmosphere, heightFt: number): number {
  const ratio = (SEA_LEVEL_K - LAPSE_K_PER_FT * heightFt) / SEA_LEVEL_K;
  const pressureRatio = ratio ** 5.25588;
  const temperatureRatio = ratio + air.isaDeviationC / SEA_LEVEL_K;
  return Math.sqrt(temperatureRatio / pressureRatio);
}

/** In cold air the altimeter shows more than the true height, by the mean temperature above the station. */
export function indicatedAltitudeFt(air: Atmosphere, heightFt: number): number {
  const aboveFt = heightFt - air.stationElevationFt;
  const meanK = SEA_LEVEL_K - LAPSE_K_PER_FT * (air.stationElevationFt + aboveFt / 2);
  return air.stationElevationFt + aboveFt / (1 + air.isaDeviationC / meanK) + air.settingErrorFt;
}

/** What an altimeter set to 1013.25 hPa shows. */
export function pressureAltitudeFt(air: Atmosphere, heightFt: number): number {
  return indicatedAltitudeFt(air, heightFt) + (STANDARD_HPA - air.altimeterSettingHpa) * FEET_PER_HPA;
}
