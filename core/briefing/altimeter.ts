import { temperatureErrorFt, trueHeightFt } from '../earth/atmosphere.ts';

/** The air around an altimeter that is set: its source's elevation, and the temperature there. */
export interface Air {
  readonly elevationFt: number;
  /** Null: as standard. */
  readonly temperatureC: number | null;
}

/** Feet that an altimeter shows at an altitude: in cold air it shows more, since true height is less than shown. */
export function altimeterShowsFt({ elevationFt, temperatureC }: Air, altitudeFt: number): number {
  if (temperatureC === null) return altitudeFt;
  return altitudeFt + temperatureErrorFt(altitudeFt - elevationFt, { elevationFt, temperatureC });
}

/** The altitude at which an altimeter shows so much: `altimeterShowsFt` undone. */
export function altitudeShownAsFt({ elevationFt, temperatureC }: Air, shownFt: number): number {
  if (temperatureC === null) return shownFt;
  return elevationFt + trueHeightFt(shownFt - elevationFt, { elevationFt, temperatureC });
}

/**
 * An altitude with the published correction for cold, which is that of an aerodrome at sea level wherever it is used
 * (FAA AIM 7-3-1). Null without a temperature.
 */
export function correctedByTableFt({ elevationFt, temperatureC }: Air, altitudeFt: number): number | null {
  if (temperatureC === null) return null;
  return altitudeFt + temperatureErrorFt(altitudeFt - elevationFt, { elevationFt: 0, temperatureC });
}
