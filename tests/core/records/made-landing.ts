import { geodesicFrom } from '../../../core/earth/geodesic.ts';
import type { ReceiverKind } from '../../../core/track/receiver.ts';
import type { Track } from '../../../core/track/track.ts';
import { buildTrack } from '../../../core/track/build-track.ts';
import { makeLog } from '../track/make-log.ts';

/** A landing drawn by hand: every foot of it is known. */
export interface MadeLanding {
  readonly touchdown: { readonly latDeg: number; readonly lonDeg: number };
  readonly bearingDeg: number;
  readonly startS: number;
  /** Of the antenna on the ground at the touchdown, and how much it rises a foot. */
  readonly groundFt: number;
  readonly slope: number;
  readonly touchdownKt: number;
  readonly brakingKtPerS: number;
  /** Where it stops slowing down: a walk, or the speed of a touch-and-go. */
  readonly slowKt: number;
}

export const LANDING: MadeLanding = {
  touchdown: { latDeg: 40, lonDeg: -40 },
  bearingDeg: 123.4,
  startS: 1_700_000_000,
  groundFt: 506,
  slope: 0,
  touchdownKt: 70,
  brakingKtPerS: 2,
  slowKt: 10,
};

interface Row {
  readonly timeS: number;
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly heightFt: number;
}

const FEET_PER_S = 1852 / 3600 / 0.3048;

/** A minute of final at 70 kt and 350 ft/min, the roll, and then a minute at its last speed. */
export function landingRows(how: Partial<MadeLanding> = {}): Row[] {
  const { touchdown, bearingDeg, startS, groundFt, slope, touchdownKt, brakingKtPerS, slowKt } = {
    ...LANDING,
    ...how,
  };
  const rows: Row[] = [];
  let alongFt = -60 * touchdownKt * FEET_PER_S;
  for (let s = -60; s <= 60; s++) {
    const place = geodesicFrom(touchdown, bearingDeg, alongFt * 0.3048);
    const heightFt = groundFt + (s < 0 ? (-s / 60) * 350 : slope * alongFt);
    rows.push({ timeS: startS + s, latDeg: place.latDeg, lonDeg: place.lonDeg, heightFt });
    const kt = s < 0 ? touchdownKt : Math.max(slowKt, touchdownKt - brakingKtPerS * (s + 0.5));
    alongFt += kt * FEET_PER_S;
  }
  return rows;
}

/** A climb of a minute at 500 ft/min and 75 kt from where rows end. */
export function climbRows(rows: readonly Row[], bearingDeg: number): Row[] {
  const end = rows.at(-1)!;
  return Array.from({ length: 60 }, (_, k) => {
    const place = geodesicFrom(end, bearingDeg, (k + 1) * 75 * FEET_PER_S * 0.3048);
    const { latDeg, lonDeg } = place;
    return { timeS: end.timeS + k + 1, latDeg, lonDeg, heightFt: end.heightFt + ((k + 1) / 60) * 500 };
  });
}

type Kind = 'altitudeGeometricFt' | 'altitudePressureFt' | 'altitudeTransponderFt' | 'altitudeUnnamedFt';

/** The track of rows, read as of a receiver that is off by little. */
export function trackOfRows(
  rows: readonly Row[],
  kind: Kind = 'altitudeGeometricFt',
  receiver: ReceiverKind = 'augmented',
): Track {
  const log = makeLog({
    timeS: rows.map(({ timeS }) => timeS),
    latDeg: rows.map(({ latDeg }) => latDeg),
    lonDeg: rows.map(({ lonDeg }) => lonDeg),
    values: { [kind]: rows.map(({ heightFt }) => heightFt) },
  });
  const track = buildTrack(log, { undulationM: null, receiver });
  if (!track.ok) throw new Error(track.refusal.message);
  return track.value;
}
