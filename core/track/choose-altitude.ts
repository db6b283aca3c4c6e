import { trueHeightFt, type Aerodrome } from '../earth/atmosphere.ts';
import { issue, type Issue } from '../issue/issue.ts';
import type { Log, Quantity } from '../log/log.ts';
import { FEET_PER_METRE } from '../units/units.ts';
import type { AltitudeSource } from './track.ts';

interface Known {
  readonly undulationM: number | null;
  readonly aerodrome: Aerodrome | null;
}

interface ChosenAltitude {
  readonly source: AltitudeSource;
  /** Height above mean sea level of each row of the log, feet. */
  readonly altitudeFt: Float64Array;
  readonly issues: readonly Issue[];
}

const STATE_SETTING = 'State the altimeter setting of the flight.';

/** What may stand for the beam's height, best first: a beam is a straight line in space, so GNSS comes first. */
const CHOICES: readonly (readonly [Quantity, AltitudeSource, caution: string | null])[] = [
  ['altitudeGeometricFt', 'geometric', null],
  ['altitudeEllipsoidFt', 'ellipsoid-less-geoid', null],
  ['altitudeUnnamedFt', 'unnamed', null],
  [
    'altitudeIndicatedFt',
    'indicated',
    'Only an altimeter height was logged: the glidepath deviation carries its temperature and setting error.',
  ],
  [
    'altitudePressureFt',
    'pressure',
    'Only pressure altitude (1013.25 hPa) was logged: the glidepath deviation is off by the altimeter setting.',
  ],
  [
    'altitudeTransponderFt',
    'transponder',
    'Only the transponder height was logged: steps of 25 or 100 ft, and off by the altimeter setting.',
  ],
];

/**
 * Chooses the height for the beam. Ellipsoid heights become heights above sea level with `undulationM`, the
 * geoid's height at the threshold (design, section 4); without it with the log's own geoid column; without
 * either they are passed over. Null when nothing serves. An
 * altimeter's height is corrected for the temperature where that is known.
 */
export function chooseAltitude(
  log: Log,
  indicatedFt: Float64Array | null,
  { undulationM, aerodrome }: Known,
): ChosenAltitude | null {
  for (const [quantity, source, caution] of CHOICES) {
    const logged = source === 'indicated' ? indicatedFt : log.values[quantity];
    // A column that is there and empty is no reason to pass over the next one.
    if (!logged || logged.every((heightFt) => Number.isNaN(heightFt))) continue;
    const altitudeFt = source === 'ellipsoid-less-geoid' ? lessGeoid(log, logged, undulationM) : logged;
    if (!altitudeFt) continue;
    if (source === 'indicated' && aerodrome) return trueHeight(logged, aerodrome);
    const tip = source === 'pressure' ? STATE_SETTING : null;
    const issues = caution ? [issue('warning', `altitude-${source}`, caution, { tip })] : [];
    return { source, altitudeFt, issues };
  }
  return null;
}

/** An altimeter's height as the air above the aerodrome makes it: lower in the cold. */
function trueHeight(indicatedFt: Float64Array, aerodrome: Aerodrome): ChosenAltitude {
  const { elevationFt, temperatureC } = aerodrome;
  const altitudeFt = indicatedFt.map((ft) => elevationFt + trueHeightFt(ft - elevationFt, aerodrome));
  const message = `Only an altimeter height was logged: for the glidepath it is corrected for ${String(temperatureC).replace('-', '−')} °C at the aerodrome.`;
  return {
    source: 'indicated',
    altitudeFt,
    issues: [issue('caution', 'altitude-indicated-corrected', message)],
  };
}

function lessGeoid(log: Log, ellipsoidFt: Float64Array, undulationM: number | null): Float64Array | null {
  const loggedM = log.values.geoidHeightM;
  if (undulationM === null && !loggedM) return null;
  return ellipsoidFt.map((heightFt, i) => heightFt - (undulationM ?? loggedM![i]!) * FEET_PER_METRE);
}
