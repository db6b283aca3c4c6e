import type { Deviations } from '../../../core/deviation/deviations.ts';
import { deriveGeometry, type FacilityGeometry } from '../../../core/facility/derive-geometry.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { findGaps } from '../../../core/track/gaps.ts';
import type { Track } from '../../../core/track/track.ts';

/** Values of each fix, one a second; what is not given is on course, on path, inbound at 120 kt. */
export interface MadeFix {
  timeS?: number;
  toGoNm: number;
  heightFt: number;
  localizer?: number;
  glidepath?: number;
  trackTrueDeg?: number;
  antennaNm?: number;
}

const START_S = Date.UTC(2026, 4, 4, 9) / 1000;

/** A track and its deviations with exactly the given values: no geometry stands between a test and its numbers. */
export function madeFlight(fixes: readonly MadeFix[], columns: Partial<Track> = {}) {
  const column = (value: (fix: MadeFix, i: number) => number) => Float64Array.from(fixes, value);
  const timeS = column((fix, i) => fix.timeS ?? START_S + i);
  const heightFt = column(({ heightFt }) => heightFt);
  const zeros = new Float64Array(fixes.length);
  const track: Track = {
    ...findGaps(timeS),
    count: fixes.length,
    timeS,
    latDeg: zeros,
    lonDeg: zeros,
    altitudeFt: heightFt,
    altitudeSource: 'geometric',
    altitudeIndicatedFt: null,
    groundspeedKt: column(() => 120),
    trackTrueDeg: column(({ trackTrueDeg }) => trackTrueDeg ?? 90),
    verticalSpeedFpm: column(() => -600),
    derived: { groundspeedKt: true, trackTrueDeg: true, verticalSpeedFpm: true },
    flags: new Uint8Array(fixes.length),
    recorded: {},
    line: Uint32Array.from(fixes, (_, i) => i + 2),
    issues: [],
    ...columns,
  };
  const deviations: Deviations = {
    localizerDeg: column(({ localizer }) => (localizer ?? 0) * 2.5),
    localizerFullScale: column(({ localizer }) => localizer ?? 0),
    glidepathDeg: column(({ glidepath }) => (glidepath ?? 0) * 0.72),
    glidepathFullScale: column(({ glidepath }) => glidepath ?? 0),
    heightAboveGlidepathFt: zeros,
    distanceToThresholdNm: column(({ toGoNm }) => toGoNm),
    centrelineOffsetFt: zeros,
    heightAboveThresholdFt: heightFt,
    distanceToAntennaNm: column(({ antennaNm, toGoNm }) => antennaNm ?? Math.abs(toGoNm + 1.5)),
  };
  return { track, deviations };
}

/** From 6.6 NM to the threshold at 120 kt, one fix a second, on a path of 300 ft a mile; `change` may alter a fix. */
export function straightIn(change: (fix: MadeFix) => Partial<MadeFix> = () => ({})): MadeFix[] {
  return Array.from({ length: 199 }, (_, i) => {
    const toGoNm = 6.6 - i / 30;
    const fix = { toGoNm, heightFt: toGoNm * 300 };
    return { ...fix, ...change(fix) };
  });
}

/** Landing east at sea level; the fix at 5 NM, decision altitude 200 ft. */
export function madeFacility(changes: Record<string, unknown> = {}): FacilityGeometry {
  const facility = {
    format: 'halfdot-facility/1',
    name: 'Made 09',
    runway: {
      designator: '09',
      threshold: { latDeg: 0, lonDeg: -30, elevationFt: 0 },
      trueBearingDeg: 90,
      lengthFt: 8000,
    },
    glidepath: { angleDeg: 3, thresholdCrossingHeightFt: 50 },
    minimums: { decisionAltitudeFt: 200 },
    finalApproachFix: { distanceNm: 5 },
    ...changes,
  };
  const parsed = parseFacility(JSON.stringify(facility), 'made.json');
  if (!parsed.ok) throw new Error(parsed.refusal.message);
  return deriveGeometry(parsed.value);
}
