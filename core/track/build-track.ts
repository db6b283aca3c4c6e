import { issue, refused, usable, type Issue, type Outcome } from '../issue/issue.ts';
import type { Log } from '../log/log.ts';
import type { Aerodrome } from '../earth/atmosphere.ts';
import { chooseAltitude } from './choose-altitude.ts';
import { coarseHeights, coarsePositions } from './coarseness.ts';
import { frozenAltitude } from './frozen-altitude.ts';
import { findGaps, type Timing } from './gaps.ts';
import { groundspeedDoubt } from './groundspeed-doubt.ts';
import { indicatedAltitude, NOT_RECORDED, type IndicatedAltitude } from './indicated-altitude.ts';
import { motionFromPositions } from './motion.ts';
import { orderFixes } from './order-fixes.ts';
import { flagFrozen, flagJumps } from './quality.ts';
import { receiverOf, type ReceiverKind } from './receiver.ts';
import { FIX_FLAG, type ExtraQuantity, type Track } from './track.ts';
import { verticalSpeedFromHeights } from './vertical-speed.ts';

export interface TrackSettings {
  /** Height of the geoid above the ellipsoid at the threshold, metres; null when not known. */
  readonly undulationM: number | null;
  /** The altimeter setting of the flight, where the user states one. */
  readonly altimeterSettingHpa?: number | null;
  /** Its air, for the height of an altimeter above it; null when not known. */
  readonly aerodrome?: Aerodrome | null;
  /** What the positions come from, where the user states it. */
  readonly receiver?: ReceiverKind | null;
}

/**
 * Makes the track of a log: ordered, flagged, with gaps marked and the columns that the log lacks derived.
 * Refused: no altitude that serves, fewer than two fixes, all fixes at one position.
 */
export function buildTrack(log: Log, settings: TrackSettings = { undulationM: null }): Outcome<Track> {
  const order = orderFixes(log);
  const take = (values: Float64Array) => pick(values, order.rows);
  const latDeg = take(log.values.latDeg);
  const lonDeg = take(log.values.lonDeg);
  if (latDeg.length < 2)
    return refused('too-few-fixes', `${log.name}: ${latDeg.length} usable fix; a track needs two or more.`);
  const { undulationM, altimeterSettingHpa = null, aerodrome = null, receiver = null } = settings;
  const shown = indicatedAltitude(log, altimeterSettingHpa);
  const fixes = { timeS: take(log.timeS), latDeg, lonDeg, line: lines(log, order.rows) };
  const frozen = shown.altitudeFt && frozenAltitude(fixes, take(shown.altitudeFt), log, take);
  // All of it: of a part left out it would be told that decision altitude was never reached.
  const indicated = frozen ? insteadOfStuck(log, altimeterSettingHpa) : shown;
  const altitude = chooseAltitude(log, indicated.altitudeFt, { undulationM, aerodrome });
  if (!altitude)
    return refused(
      'no-altitude',
      `${log.name}: no altitude column that can stand for the height of the aircraft.`,
    );
  if (isConstant(latDeg) && isConstant(lonDeg))
    return refused(
      'no-movement',
      `${log.name}: all ${latDeg.length} fixes stand at one position (${place(log)}).`,
      {
        firstLine: log.line[0]!,
        tip: 'Was the recorder without reception, or was the wrong column exported?',
      },
    );

  const heights = {
    altitudeFt: take(altitude.altitudeFt),
    altitudeIndicatedFt: indicated.altitudeFt && take(indicated.altitudeFt),
  };
  const { byPositionsKt, ...track } = assemble(log, { latDeg, lonDeg, ...heights }, order.rows);
  const issues: Issue[] = [
    ...order.issues,
    ...altitude.issues,
    // Where the beam itself has nothing but pressure altitude, that says it all.
    ...(altitude.source === 'pressure' ? [] : indicated.issues),
    ...(frozen ? [frozen] : []),
    ...groundspeedDoubt(log, track.recorded, byPositionsKt),
    ...gapIssues(track),
    ...flagFrozen(track),
    ...flagJumps(track),
    ...coarsePositions(latDeg, lonDeg),
    ...coarseHeights(track.altitudeFt),
  ];
  const known = {
    altitudeSource: altitude.source,
    temperatureKnown: aerodrome !== null,
    receiver: receiverOf(log, receiver),
  };
  return usable({ ...track, ...known, issues }, issues);
}

type Positions = Pick<Track, 'latDeg' | 'lonDeg' | 'altitudeFt' | 'altitudeIndicatedFt'>;

/**
 * Puts the columns together and derives what the log lacks; `flags` hold the gaps and nothing else yet, and
 * `byPositionsKt` the groundspeed that the recorded one is held to.
 */
function assemble(log: Log, positions: Positions, rows: Uint32Array | null) {
  const take = (values: Float64Array) => pick(values, rows);
  const { latDeg, lonDeg, altitudeFt } = positions;
  const timeS = take(log.timeS);
  const timing = findGaps(timeS);
  const recorded = recordedColumns(log, take);
  const motion = motionFromPositions(timeS, latDeg, lonDeg, timing.gaps);
  return {
    ...positions,
    ...timing,
    count: timeS.length,
    timeS,
    groundspeedKt: filled(recorded.groundspeedKt ?? motion.groundspeedKt, motion.groundspeedKt),
    trackTrueDeg: motion.trackTrueDeg,
    verticalSpeedFpm: recorded.verticalSpeedFpm ?? verticalSpeedFromHeights(timeS, altitudeFt, timing.gaps),
    derived: {
      groundspeedKt: !recorded.groundspeedKt,
      trackTrueDeg: true as const,
      verticalSpeedFpm: !recorded.verticalSpeedFpm,
    },
    flags: gapFlags(timeS.length, timing),
    recorded,
    byPositionsKt: motion.groundspeedKt,
    line: lines(log, rows),
  };
}

/** What is left where the altimeter is stuck: a pressure altitude with a setting, unless that is the stuck one. */
function insteadOfStuck(log: Log, settingHpa: number | null): IndicatedAltitude {
  const { altitudeIndicatedFt: stuck, ...values } = log.values;
  return stuck ? indicatedAltitude({ values }, settingHpa) : NOT_RECORDED;
}

function pick(values: Float64Array, rows: Uint32Array | null): Float64Array {
  return rows ? Float64Array.from(rows, (row) => values[row]!) : values;
}

function lines(log: Log, rows: Uint32Array | null): Uint32Array {
  return rows ? rows.map((row) => log.line[row]!) : log.line;
}

function recordedColumns(log: Log, take: (values: Float64Array) => Float64Array): Track['recorded'] {
  const { latDeg: _lat, lonDeg: _lon, ...rest } = log.values;
  const columns: { [Q in ExtraQuantity]?: Float64Array } = {};
  for (const [quantity, values] of Object.entries(rest)) columns[quantity as ExtraQuantity] = take(values);
  return columns;
}

/** Recorded speeds, with the derived one where a row lacks it. */
function filled(recorded: Float64Array, derived: Float64Array): Float64Array {
  if (recorded === derived || !recorded.some((value) => Number.isNaN(value))) return recorded;
  return recorded.map((value, i) => (Number.isNaN(value) ? derived[i]! : value));
}

function isConstant(values: Float64Array): boolean {
  return values.every((value) => value === values[0]);
}

function place(log: Log): string {
  return `${log.values.latDeg[0]!}, ${log.values.lonDeg[0]!}`;
}

function gapFlags(count: number, timing: Timing): Uint8Array {
  const flags = new Uint8Array(count);
  for (const gap of timing.gaps) flags[gap.beforeIndex + 1] = FIX_FLAG.gapBefore;
  return flags;
}

function gapIssues({ gaps, line }: Pick<Track, 'gaps' | 'line'>): Issue[] {
  if (gaps.length === 0) return [];
  const totalS = gaps.reduce((sum, gap) => sum + gap.endS - gap.startS, 0);
  const message =
    gaps.length === 1
      ? `The log has a gap of ${Math.round(totalS)} s; it counts as unrecorded time.`
      : `The log has ${gaps.length} gaps, ${Math.round(totalS)} s in all; they count as unrecorded time.`;
  return [issue('note', 'gap', message, { count: gaps.length, firstLine: line[gaps[0]!.beforeIndex + 1]! })];
}
