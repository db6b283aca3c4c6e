import { temperatureErrorFt } from '../earth/atmosphere.ts';

/** The air around an altimeter that is set: its source's elevation, and the temperature there. */
export interface Air {
  readonly elevationFt: number;
  /** Null: as standard. */
  readonly temperatureC: number | null;
}

/** Feet that an altimeter shows at an altitude: in cold air it shows more, since true height is less than shown. */
export function altimeterShowsFt({ elevationFt, temperatureC }: Air, altitudeFt: number): number {
  if (temperatureC === null) return altitudeFt;
  return altitudeFt + temperatureErrorFt(altitudeFt - elevationFt, temperatureC);
}

/** In the coldest air of the table each round leaves a third of what was missing, so that it is a millionth of a foot. */
const ROUNDS = 25;

/** The altitude at which an altimeter shows so much: `altimeterShowsFt` undone. */
export function altitudeShownAsFt(air: Air, shownFt: number): number {
  let altitudeFt = shownFt;
  for (let round = 0; round < ROUNDS; round++)
    altitudeFt = shownFt - (altimeterShowsFt(air, altitudeFt) - altitudeFt);
  return altitudeFt;
}
