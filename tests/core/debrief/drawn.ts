import { defineFacility } from '../../../core/analyze.ts';
import { composeDebrief } from '../../../core/debrief/compose-debrief.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import type { Heights } from '../../../core/debrief/heights.ts';
import { projectTrack } from '../../../core/deviation/project-track.ts';
import type { Quantity } from '../../../core/log/log.ts';
import type { Standard } from '../../../core/standard/standard.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { NOTHING_STATED, type Stated } from '../../../core/standard/stated.ts';
import { buildTrack } from '../../../core/track/build-track.ts';
import { NO_ERROR, positionErrorOf } from '../../../core/track/position-error.ts';
import type { ReceiverKind } from '../../../core/track/receiver.ts';
import { drawFlight, type Drawing } from '../../support/flight/drawn-flight.ts';
import type { FlightTruth } from '../../support/flight/flight-truth.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { makeLog } from '../track/make-log.ts';

type Columns = { [Q in Quantity]?: number[] };

interface Recording {
  /** Which of the truth's ten a second are logged; every tenth when not said. */
  readonly keep?: (tenth: number) => boolean;
  readonly columns?: (truth: FlightTruth, tenths: readonly number[]) => Columns;
  readonly facility?: object;
  /** What the log's heights are high by. */
  readonly highByFt?: number;
  /** As logged when not said; null: as the program has it of itself. */
  readonly heights?: Heights | null;
  /** What the fixes are from; they are what they say when not said. */
  readonly receiver?: ReceiverKind;
  readonly antennaHeightFt?: number;
}

export const STRAIGHT_IN: Drawing = {
  facility: PETRELHOLM,
  fromNm: 8,
  toNm: 0.05,
  groundspeedKt: 90,
  localizerFullScale: () => 0,
  glidepathFullScale: () => 0,
};

/**
 * The debrief of a flight with the needles drawn: 90 kt from 8 NM to just before the threshold of Petrelholm 07, where
 * the fix stands at 5 NM and decision altitude is 240 ft. 40 s a mile: the fix is passed 120 s after the start.
 */
export function debriefOf(
  drawing: Partial<Drawing> = {},
  recording: Recording = {},
  stated: Partial<Stated> = {},
  standard: Standard = DEFAULT_STANDARD,
): Debrief {
  return debriefTruth(drawFlight({ ...STRAIGHT_IN, ...drawing }), recording, stated, standard);
}

export function debriefTruth(
  truth: FlightTruth,
  recording: Recording = {},
  stated: Partial<Stated> = {},
  standard: Standard = DEFAULT_STANDARD,
): Debrief {
  const {
    keep = (tenth) => tenth % 10 === 0,
    columns,
    facility = PETRELHOLM,
    highByFt = 0,
    heights = 'as-logged',
    receiver = null,
    antennaHeightFt = 6,
  } = recording;
  const tenths = Array.from(truth.columns.timeS.keys()).filter(keep);
  const pick = (column: Float64Array) => tenths.map((tenth) => column[tenth]!);
  const log = makeLog({
    timeS: pick(truth.columns.timeS),
    latDeg: pick(truth.columns.latDeg),
    lonDeg: pick(truth.columns.lonDeg),
    values: {
      altitudeGeometricFt: pick(truth.columns.heightFt).map((ft) => ft + highByFt),
      ...columns?.(truth, tenths),
    },
  });
  const defined = defineFacility(JSON.stringify(facility), 'petrelholm.json');
  const track = buildTrack(log, { undulationM: null, receiver });
  if (!defined.ok || !track.ok) throw new Error('the drawn flight is refused');
  const { geometry } = defined.value;
  const deviations = projectTrack(track.value, geometry);
  const { facility: parsed } = defined.value;
  const error = receiver === null ? NO_ERROR : positionErrorOf(track.value, geometry.threshold.elevationFt);
  return composeDebrief(
    { log, track: track.value, facility: parsed, geometry, facilityIssues: [], deviations, error },
    { standard, stated: { ...NOTHING_STATED, ...stated }, ...(heights && { heights }), antennaHeightFt },
  );
}
