import { readFlight, type Flight } from '../../../core/analyze.ts';
import { csvText } from '../../support/files/csv.ts';
import { englishLayout } from '../../support/files/csv-layouts.ts';
import { gpxText } from '../../support/files/gpx.ts';
import { EXACT, recordFlight } from '../../support/files/logged-fix.ts';
import type { FlightPlan } from '../../support/flight/flight-plan.ts';
import type { FlightTruth } from '../../support/flight/flight-truth.ts';
import { fly } from '../../support/flight/fly.ts';
import { AUGMENTED, NO_ERROR, PHONE } from '../../support/flight/gnss-error.ts';
import { seededRandom } from '../../support/flight/random.ts';
import { CHASER, DRIFTER, STUDENT, TIDY } from '../../support/flight/skills.ts';
import { CHOUGHFELL } from '../../support/samples/choughfell.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { airAt } from '../../support/samples/weather.ts';
import { WHIMBRELNESS } from '../../support/samples/whimbrelness.ts';
import { straightInLanding } from '../../support/scenarios/approaches.ts';
import { withSeed } from '../../support/scenarios/scene.ts';
import { idle } from '../log/reading.ts';

const AERODROMES = [PETRELHOLM, CHOUGHFELL, WHIMBRELNESS];
const PILOTS = [TIDY, STUDENT, CHASER, DRIFTER];

/** A landing of chance: aerodrome, pilot, and up to 16 kt from anywhere but strongly behind. */
function landingPlan(seed: number): FlightPlan {
  const random = seededRandom(`landing/${seed}`);
  const facility = AERODROMES[seed % 3]!;
  const ahead = facility.localizer.courseMagneticDeg + facility.magneticVariationDeg;
  const surface = { fromTrueDeg: ahead - 100 + 200 * random.uniform(), speedKt: 16 * random.uniform() };
  const unrest = random.uniform();
  const plan = straightInLanding(facility, {
    skill: PILOTS[seed % 4]!,
    air: airAt(facility, -20 + 40 * random.uniform(), 990 + 45 * random.uniform()),
    wind: {
      surface,
      at2000Ft: { ...surface, speedKt: surface.speedKt * 1.5 + 3 },
      gustKt: 0.3 + 2 * unrest,
      verticalGustFpm: 10 + 80 * unrest,
    },
  });
  return withSeed(plan, seed);
}

/** Receivers, the logs that they make, and how much of their slow error stays the same through a flight. */
export const RECEIVERS = {
  augmented: { gnss: { ...AUGMENTED, constantShare: 0.5 }, file: 'table' },
  exact: { gnss: NO_ERROR, file: 'table' },
  phone: { gnss: { ...PHONE, timeConstantS: 300, constantShare: 0.5 }, file: 'positions' },
} as const;

/** A flight as one of the receivers recorded it, once a second, and the program read it. */
export async function recordedBy(
  truth: FlightTruth,
  receiver: keyof typeof RECEIVERS,
  rateHz = 1,
): Promise<Flight> {
  const { gnss, file } = RECEIVERS[receiver];
  const fixes = recordFlight(truth, { ...EXACT, gnss, rateHz, seed: receiver });
  const text =
    file === 'table'
      ? csvText(englishLayout(1), fixes)
      : gpxText({ version: '1.1', trackName: 'flight', motion: true, timeDecimals: 1 }, fixes);
  return readText(text);
}

/** The flight of a text; it must be usable. */
async function readText(text: string): Promise<Flight> {
  const source = { name: 'flight.csv', sha256: () => 'f00d', size: text.length, chunks: [text] };
  const flight = await readFlight(source, null, {}, idle);
  if (!flight.ok) throw new Error(flight.refusal.message);
  return flight.value;
}

const flown = new Map<number, FlightTruth>();

/** The landing of a number, flown once for all tests of a file. */
export function landingOf(seed: number): FlightTruth {
  const truth = flown.get(seed) ?? fly(landingPlan(seed));
  flown.set(seed, truth);
  return truth;
}
