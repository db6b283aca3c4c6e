import { defineFacility, readFlight, type DefinedFacility } from '../../../core/analyze.ts';
import { withHeights } from '../../../core/debrief/heights.ts';
import { projectTrack } from '../../../core/deviation/project-track.ts';
import { findApproaches, type FoundApproaches } from '../../../core/approach/find-approaches.ts';
import { flownAt, type Flown } from '../../../core/approach/flown.ts';
import { judgeApproach } from '../../../core/standard/judge-approach.ts';
import type { CriterionJudgement, Verdict } from '../../../core/standard/judgement.ts';
import type { Standard } from '../../../core/standard/standard.ts';
import { NOTHING_STATED } from '../../../core/standard/stated.ts';
import { NO_ERROR, positionErrorOf } from '../../../core/track/position-error.ts';
import type { ReceiverKind } from '../../../core/track/receiver.ts';
import { PANEL } from '../flight/altimeter-error.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import type { GnssClass } from '../flight/gnss-error.ts';
import { csvText } from '../files/csv.ts';
import { englishLayout } from '../files/csv-layouts.ts';
import { gpxText } from '../files/gpx.ts';
import { EXACT, recordFlight, type Recorder } from '../files/logged-fix.ts';

/** How a flight is recorded: with airspeed and altimeter in a table, or with positions alone as a phone has them. */
export interface Way {
  readonly receiver: ReceiverKind;
  readonly file: 'table' | 'positions';
  readonly gnss: GnssClass;
  readonly heightBiasFt?: number;
}

/** What one needle did on one approach: fixes on it, and those whose true needle lies within the band. */
export interface Coverage {
  readonly fixes: number;
  readonly within: number;
}

export interface Trial {
  readonly localizer: Coverage;
  readonly glidepath: Coverage;
  /** Every criterion that the position bears on, as the log without errors has it and as this one has it. */
  readonly verdicts: readonly { readonly id: string; readonly truth: Verdict; readonly told: Verdict }[];
}

/** A log, read as the program reads it, with the error that it thinks of or with none. */
interface Read {
  readonly flown: Flown;
  readonly found: FoundApproaches;
}

/** One flight, recorded without error and with, and what the program makes of both. */
export async function trial(truth: FlightTruth, way: Way, standard: Standard): Promise<Trial> {
  const defined = defineFacility(JSON.stringify(truth.plan.facility), 'facility.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const bare = { ...EXACT, rateHz: 1, altimeter: PANEL };
  const exact = await read(textOf(truth, bare, way), defined.value, null);
  const told = await read(
    textOf(truth, { ...bare, ...way, seed: way.receiver }, way),
    defined.value,
    way.receiver,
  );
  return {
    localizer: coverage(exact, told, 'localizerFullScale', (i) => told.flown.needleError.localizer.at(i)),
    glidepath: coverage(exact, told, 'glidepathFullScale', (i) => told.flown.needleError.glidepath.at(i)),
    verdicts: verdictsOf(exact, told, standard),
  };
}

function textOf(truth: FlightTruth, recorder: Recorder, { file }: Way): string {
  const fixes = recordFlight(truth, recorder);
  if (file === 'table') return csvText(englishLayout(1), fixes);
  return gpxText({ version: '1.1', trackName: 'flight', motion: true, timeDecimals: 1 }, fixes);
}

const JOB = { progress: () => {}, cancelled: () => false };

async function read(
  text: string,
  { geometry, facility }: DefinedFacility,
  receiver: ReceiverKind | null,
): Promise<Read> {
  const source = { name: 'flight', sha256: () => '', size: text.length, chunks: [text] };
  const flight = await readFlight(source, geometry.threshold, receiver ? { receiver } : {}, JOB);
  if (!flight.ok) throw new Error(flight.refusal.message);
  const { track } = flight.value;
  const error = receiver ? positionErrorOf(track, geometry.threshold.elevationFt) : NO_ERROR;
  const flown = flownAt(track, projectTrack(track, geometry), geometry, { error });
  const gatesAboveFt = facility.runway.touchdownZoneElevationFt ?? facility.runway.threshold.elevationFt;
  return receiver
    ? withHeights(flown, gatesAboveFt, null)
    : { flown, found: findApproaches(flown, gatesAboveFt) };
}

/** On the approaches that were found, at the fixes that both logs have: those on final and before it. */
function coverage(
  exact: Read,
  told: Read,
  needle: 'localizerFullScale' | 'glidepathFullScale',
  halfWidth: (i: number) => number,
): Coverage {
  const { timeS } = told.flown.track;
  const trueAt = new Map(
    Array.from(exact.flown.track.timeS, (s, i) => [s, exact.flown.deviations[needle][i]!]),
  );
  let fixes = 0;
  let within = 0;
  for (const { segments } of told.found.approaches)
    for (const { kind, startS, endS } of segments) {
      if (kind !== 'intercept' && kind !== 'final') continue;
      for (let i = 0; i < timeS.length; i++) {
        const truly = trueAt.get(timeS[i]!);
        if (timeS[i]! < startS || timeS[i]! > endS || truly === undefined) continue;
        fixes++;
        if (Math.abs(told.flown.deviations[needle][i]! - truly) <= halfWidth(i)) within++;
      }
    }
  return { fixes, within };
}

function verdictsOf(exact: Read, told: Read, standard: Standard): Trial['verdicts'] {
  const [truly, found] = [exact, told].map(({ flown, found: { approaches } }) =>
    approaches
      .filter(({ kind }) => kind === 'approach')
      .map((approach) => ({
        outcome: approach.outcome,
        criteria: judgeApproach({ flown, approach, standard, stated: NOTHING_STATED }).criteria,
      })),
  ) as [Judged[], Judged[]];
  // Another number of approaches, or another ending, is the matter of another test.
  if (truly.map(({ outcome }) => outcome).join() !== found.map(({ outcome }) => outcome).join()) return [];
  return truly.flatMap(({ criteria }, k) =>
    criteria.map(({ id, verdict }, c) => ({ id, truth: verdict, told: found[k]!.criteria[c]!.verdict })),
  );
}

interface Judged {
  readonly outcome: string;
  readonly criteria: readonly CriterionJudgement[];
}
