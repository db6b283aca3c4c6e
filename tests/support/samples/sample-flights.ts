import { PANEL } from '../flight/altimeter-error.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import { AUGMENTED, PHONE, PLAIN } from '../flight/gnss-error.ts';
import { csvText, type CsvLayout } from '../files/csv.ts';
import { elapsedLayout, englishLayout, epochLayout, germanLayout, unitsRowLayout } from '../files/csv-layouts.ts';
import { gpxText, type GpxStyle } from '../files/gpx.ts';
import type { LoggedFix, Recorder } from '../files/logged-fix.ts';
import { disorder, duplicates, gap, type Mishap } from '../files/mishaps.ts';
import { FIRST_APPROACH } from './first-approach.ts';
import * as elsewhere from './plans-elsewhere.ts';
import * as petrelholm from './plans-petrelholm.ts';

/** One file of samples/: who flew, what it shows, and how it was recorded. */
export interface SampleFlight {
  readonly file: string;
  readonly plan: FlightPlan;
  readonly student: string;
  readonly instructor: string | null;
  readonly shows: string;
  readonly habit: string;
  readonly recorder: Recorder;
  readonly mishaps?: readonly Mishap[];
  readonly write: (fixes: readonly LoggedFix[]) => string;
}

const ROWAN = 'Rowan Teal';
const HAZEL = 'Hazel Wren';
const LINDEN = 'Linden Siskin';
const WILLOW = 'Willow Dunlin';
const CRANE = 'Juniper Crane';
const HERON = 'Ash Heron';

const panel = (rateHz: number): Recorder => ({ rateHz, gnss: AUGMENTED, altimeter: PANEL });
const csv =
  (layout: CsvLayout) =>
  (fixes: readonly LoggedFix[]): string =>
    csvText(layout, fixes);
const gpx =
  (style: GpxStyle) =>
  (fixes: readonly LoggedFix[]): string =>
    gpxText(style, fixes);
const elapsed = (fixes: readonly LoggedFix[]): string => csvText(elapsedLayout(fixes[0]?.timeS ?? 0), fixes);

const AT_PETRELHOLM: readonly SampleFlight[] = [
  {
    file: 'first-approach.csv',
    plan: FIRST_APPROACH,
    student: ROWAN,
    instructor: CRANE,
    shows: 'Turned late and through the localizer, late down and high at the fix, caught, landed.',
    habit: 'comma, units in the names, UTC, 1 Hz',
    recorder: panel(1),
    write: csv(englishLayout()),
  },
  {
    file: 'first-approach.gpx',
    plan: FIRST_APPROACH,
    student: ROWAN,
    instructor: CRANE,
    shows: 'The same flight as it comes without airspeed and altimeter.',
    habit: 'GPX 1.1, speed and course as extensions, 1 Hz',
    recorder: panel(1),
    write: gpx({ version: '1.1', trackName: 'First approach', motion: true }),
  },
  {
    file: 'from-above.csv',
    plan: petrelholm.FROM_ABOVE,
    student: HAZEL,
    instructor: HERON,
    shows: 'Kept high, down to the glidepath from above and fast, then chasing it up and down.',
    habit: 'comma, units in the names, UTC with tenths, 10 Hz',
    recorder: panel(10),
    write: csv(englishLayout(1)),
  },
  {
    file: 'unstable-and-continued.csv',
    plan: petrelholm.UNSTABLE,
    student: LINDEN,
    instructor: HERON,
    shows: 'Fast, high and diving with a tailwind; never stable, and landed all the same.',
    habit: 'remarks, a row of units, local time two hours behind UTC, padded, 1 Hz',
    recorder: panel(1),
    write: csv(unitsRowLayout(['Sample of an invented flight', 'Recorder: panel, unit 2'], -120)),
  },
  {
    file: 'went-around.csv',
    plan: petrelholm.WENT_AROUND,
    student: ROWAN,
    instructor: CRANE,
    shows: 'Drifting high and out of limits, and away at once: a sound decision.',
    habit: 'comma, units in the names, UTC, 1 Hz',
    recorder: panel(1),
    write: csv(englishLayout()),
  },
  {
    file: 'touch-and-go-then-again.csv',
    plan: petrelholm.TWICE,
    student: HAZEL,
    instructor: CRANE,
    shows: 'Two approaches in one log: a restless one with a touch-and-go, and a better one to land.',
    habit: 'short names, epoch milliseconds, metres and metres a second, 2 Hz',
    recorder: panel(2),
    write: csv(epochLayout()),
  },
  {
    file: 'ends-on-final.gpx',
    plan: petrelholm.ENDS_ON_FINAL,
    student: WILLOW,
    instructor: HERON,
    shows: 'Drifting left and high until the recorder is switched off at 500 ft: what half a final can say.',
    habit: 'GPX 1.0, speed and course as elements, 1 Hz',
    recorder: panel(1),
    write: gpx({ version: '1.0', trackName: 'Ends on final', motion: true }),
  },
  {
    file: 'circled.gpx',
    plan: petrelholm.CIRCLED,
    student: WILLOW,
    instructor: HERON,
    shows: 'Down the beam to circling height with the wind behind, and round to the other end.',
    habit: 'GPX 1.1 with geoid heights, every second second',
    recorder: panel(0.5),
    write: gpx({ version: '1.1', trackName: 'Circled', motion: false, geoidHeightM: 14.4 }),
  },
  {
    file: 'joined-inside-the-fix.csv',
    plan: petrelholm.JOINED_LATE,
    student: LINDEN,
    instructor: CRANE,
    shows: 'Vectored onto the localizer inside the final approach fix.',
    habit: 'comma, units in the names, UTC, 1 Hz',
    recorder: panel(1),
    write: csv(englishLayout()),
  },
  {
    file: 'tidy-landing.csv',
    plan: petrelholm.TIDY_LANDING,
    student: ROWAN,
    instructor: CRANE,
    shows: 'The same student ten weeks on: in the middle all the way down.',
    habit: 'comma, units in the names, UTC, 1 Hz',
    recorder: panel(1),
    write: csv(englishLayout()),
  },
  {
    file: 'every-five-seconds.csv',
    plan: petrelholm.TIDY_LANDING,
    student: ROWAN,
    instructor: CRANE,
    shows: 'That landing with a fix every five seconds: too few to judge stability.',
    habit: 'short names, epoch milliseconds, metres, 0.2 Hz',
    recorder: panel(0.2),
    write: csv(epochLayout()),
  },
  {
    file: 'phone.gpx',
    plan: petrelholm.PHONE_LANDING,
    student: 'Alder Finch',
    instructor: null,
    shows: 'A pilot alone with a phone: its errors are as large as the question, its heights 35 ft high.',
    habit: 'GPX 1.1, position, height and time only, 1 Hz, phone errors',
    recorder: { ...panel(1), gnss: PHONE, heightBiasFt: 35 },
    write: gpx({ version: '1.1', trackName: 'Evening practice', motion: false }),
  },
  {
    file: 'recorder-fault.csv',
    plan: petrelholm.RECORDER_FAULT,
    student: WILLOW,
    instructor: HERON,
    shows: 'Twenty-five seconds of final missing, rows twice and rows in the wrong order.',
    habit: 'remarks, a row of units, UTC, padded, 1 Hz, plain GNSS errors',
    recorder: { ...panel(1), gnss: PLAIN },
    mishaps: [gap(295, 320), duplicates(50), disorder(83)],
    write: csv(unitsRowLayout(['Sample of an invented flight', 'Recorder: panel, unit 1'], 0)),
  },
];

const ELSEWHERE: readonly SampleFlight[] = [
  {
    file: 'steep-and-high.csv',
    plan: elsewhere.STEEP_AND_HIGH,
    student: HAZEL,
    instructor: HERON,
    shows: 'Down 3.5 degrees at 5,800 ft on a hot day: the sink rate that thin air asks for.',
    habit: 'German words, semicolons, decimal commas, metres and km/h, byte-order mark, 1 Hz',
    recorder: panel(1),
    write: csv(germanLayout()),
  },
  {
    file: 'overflight.csv',
    plan: elsewhere.OVERFLIGHT,
    student: 'Alder Finch',
    instructor: null,
    shows: 'Across the aerodrome on the way elsewhere: no approach.',
    habit: 'comma, units in the names, UTC, 0.5 Hz',
    recorder: panel(0.5),
    write: csv(englishLayout()),
  },
  {
    file: 'missed-at-minimums.csv',
    plan: elsewhere.COLD_MISSED,
    student: LINDEN,
    instructor: CRANE,
    shows: 'Nothing seen at minimums and away, on a cold day with the altimeter reading high.',
    habit: 'remarks, a row of units, local time eight hours behind UTC, padded, 1 Hz',
    recorder: panel(1),
    write: csv(unitsRowLayout(['Sample of an invented flight', 'Recorder: panel, unit 4'], -480)),
  },
  {
    file: 'offset-course.csv',
    plan: elsewhere.OFFSET_COURSE,
    student: WILLOW,
    instructor: CRANE,
    shows: 'A localizer 2.1 degrees off the runway: needle centred to minimums, then a turn to line up.',
    habit: 'comma, units in the names, UTC with tenths, needles recorded in dots, 5 Hz',
    recorder: panel(5),
    write: csv(englishLayout(1, true)),
  },
  {
    file: 'low-approach.csv',
    plan: elsewhere.LOW_APPROACH,
    student: LINDEN,
    instructor: HERON,
    shows: 'Along the runway at 100 ft and up again without touching.',
    habit: 'seconds since switched on and no date, 1 Hz',
    recorder: panel(1),
    write: elapsed,
  },
];

/** All shipped flights, in the order in which the lessons were flown at each aerodrome. */
export const SAMPLE_FLIGHTS: readonly SampleFlight[] = [...AT_PETRELHOLM, ...ELSEWHERE];
