import { USUAL_ANTENNA_FT } from '../approach/flown.ts';
import { placeOnAxis } from '../facility/runway-axis.ts';
import { refused, usable, type Outcome } from '../issue/issue.ts';
import type { Track } from '../track/track.ts';
import { wrap180 } from '../units/units.ts';
import { whole } from '../units/whole.ts';
import { landedRunway, type LandedRunway } from './landed-runway.ts';
import { landingDraft, type DraftedLog, type LandingDraft } from './landing-draft.ts';
import { climbsAway, landingRolls, type LandingRoll } from './landing-rolls.ts';
import { rollLine } from './roll-line.ts';

/** What the user may say, and what the log's day is. */
interface Known {
  /** Of the receiver's antenna above the ground, feet. */
  readonly antennaHeightFt?: number;
  /** Decimal year of the flight; null when no day is known. */
  readonly onDate: number | null;
}

/** Shorter than this a roll leads nobody along a runway: 30 ft aside would be 3.4° (ours). */
const LEAST_ROLL_FT = 500;
/** Two rolls are on one runway when they point alike, and lie this near to one line (ours). */
const ONE_RUNWAY_DEG = 8;
const ONE_RUNWAY_FT = 200;

/**
 * Drafts the runways that a log landed on, without any facility: one draft for each direction of each runway, from its
 * longest roll. Refused with a code where it holds no roll that ends at a walk (`landing-none`, or
 * `landing-touch-and-go` where it came down and climbed away) or none long enough (`landing-roll-too-short`).
 */
export function draftsFromLanding(
  log: DraftedLog,
  track: Track,
  { antennaHeightFt = USUAL_ANTENNA_FT, onDate }: Known,
): Outcome<readonly LandingDraft[]> {
  const rolls = landingRolls(track);
  if (rolls.length === 0) return noRoll(log.name, climbsAway(track));
  const runways = rolls.flatMap((roll) => runwayUnder(track, roll, antennaHeightFt) ?? []);
  const long = runways.filter(({ rollFt }) => rollFt >= LEAST_ROLL_FT);
  if (long.length === 0) return tooShort(log.name, runways);
  const { altitudeSource } = track;
  const drafts = byRunway(long).map((one) =>
    landingDraft(one[0]!, { log, altitudeSource, onDate, rolls: one.length }),
  );
  return usable(drafts);
}

function runwayUnder(track: Track, roll: LandingRoll, antennaFt: number): LandedRunway | null {
  const line = rollLine(track, roll);
  return line === null ? null : landedRunway(track, line, antennaFt);
}

/** Groups of those that lie on one line, the longest roll first in each; in the order of the log. */
function byRunway(runways: readonly LandedRunway[]): LandedRunway[][] {
  const groups: LandedRunway[][] = [];
  for (const runway of runways) {
    const group = groups.find(([first]) => isOneRunway(first!, runway));
    if (group) group.push(runway);
    else groups.push([runway]);
  }
  return groups.map((group) => group.toSorted((a, b) => b.rollFt - a.rollFt));
}

function isOneRunway(one: LandedRunway, other: LandedRunway): boolean {
  if (Math.abs(wrap180(one.trueBearingDeg - other.trueBearingDeg)) > ONE_RUNWAY_DEG) return false;
  const { rightFt } = placeOnAxis(one, other.touchdown);
  return Math.abs(rightFt) <= ONE_RUNWAY_FT;
}

function noRoll(name: string, climbed: boolean): Outcome<never> {
  const tip = 'A landing that slows to a walk on the runway is needed, all of it recorded.';
  if (!climbed) return refused('landing-none', `${name} holds no landing.`, { tip });
  const message = `${name} holds no landing to a stop: it comes down and climbs away again, as in a touch-and-go.`;
  return refused('landing-touch-and-go', message, { tip });
}

function tooShort(name: string, runways: readonly LandedRunway[]): Outcome<never> {
  const longestFt = Math.max(0, ...runways.map(({ rollFt }) => rollFt));
  const found = longestFt === 0 ? 'too few fixes' : `${whole(longestFt)} ft`;
  const message = `The straight part of the roll in ${name} has ${found}: a direction takes ${LEAST_ROLL_FT} ft.`;
  return refused('landing-roll-too-short', message, { tip: 'Take another landing on that runway.' });
}
