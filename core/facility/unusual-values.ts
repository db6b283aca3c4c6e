import { issue, type Issue } from '../issue/issue.ts';
import type { FacilityGeometry } from './derive-geometry.ts';
import type { Facility } from './facility-schema.ts';
import { decimal } from './wording.ts';
import { whole } from '../units/whole.ts';

/** A course is 3 to 6 degrees wide, full left to full right (FAA handbooks; second-hand). */
const USUAL_WIDTH_DEG = { min: 3, max: 6 } as const;
/** One side: 0.17 of the angle in one textbook, 0.23 by FAA AIM 1-1-9 d.2, 0.24 by ICAO; all of the beam is 0.48. */
const USUAL_FULL_SCALE_SHARE = { min: 0.15, max: 0.35 } as const;
/** Usual angles (FAA Instrument Flying Handbook; second-hand). */
const USUAL_ANGLE_DEG = { min: 2.5, max: 3.5 } as const;
/** Cat II minimums are 100 ft (FAA AIM 1-1-9 i; second-hand); the upper end is our own choice. */
const USUAL_DECISION_HEIGHT_FT = { min: 100, max: 1500 } as const;

/** Values that are possible but more often a slip: half for whole, a height for an altitude, another aid's channel. */
export function unusualValues(facility: Facility, geometry: FacilityGeometry): Issue[] {
  return [
    ...courseWidth(facility),
    ...glidepathFullScale(facility),
    ...glidepathAngle(facility),
    ...decisionHeight(geometry),
    ...frequency(facility),
  ];
}

const isOutside = (value: number, { min, max }: { min: number; max: number }): boolean =>
  value < min || value > max;

function courseWidth({ localizer }: Facility): Issue[] {
  const widthDeg = localizer?.courseWidthDeg;
  if (widthDeg === undefined || !isOutside(widthDeg, USUAL_WIDTH_DEG)) return [];
  const message = `localizer.courseWidthDeg is ${decimal(widthDeg, 2)}, but courses are ${USUAL_WIDTH_DEG.min} to ${USUAL_WIDTH_DEG.max} degrees wide from full left to full right`;
  const tip =
    widthDeg < USUAL_WIDTH_DEG.min ? 'Is it one side only? The width is both sides together.' : null;
  return [issue('warning', 'facility-course-width-unusual', `${message}.`, { tip })];
}

function glidepathFullScale({ glidepath }: Facility): Issue[] {
  const { fullScaleDeg, angleDeg } = glidepath;
  if (fullScaleDeg === undefined || !isOutside(fullScaleDeg / angleDeg, USUAL_FULL_SCALE_SHARE)) return [];
  const usual = decimal(0.24 * angleDeg, 2);
  const message = `glidepath.fullScaleDeg is ${decimal(fullScaleDeg, 2)}, but for a path of ${decimal(angleDeg, 2)} degrees about ${usual} is usual`;
  const tip =
    fullScaleDeg / angleDeg > USUAL_FULL_SCALE_SHARE.max
      ? 'Is it the whole beam, full up to full down? Full scale is one side.'
      : 'Is it the value of one dot? Full scale is two dots of two, or five of five.';
  return [issue('warning', 'facility-full-scale-unusual', `${message}.`, { tip })];
}

function glidepathAngle({ glidepath: { angleDeg } }: Facility): Issue[] {
  if (!isOutside(angleDeg, USUAL_ANGLE_DEG)) return [];
  const message = `A glidepath of ${decimal(angleDeg, 2)} degrees is outside the usual ${USUAL_ANGLE_DEG.min} to ${USUAL_ANGLE_DEG.max}`;
  return [
    issue('note', 'facility-glidepath-angle-unusual', `${message}.`, { tip: 'Check glidepath.angleDeg.' }),
  ];
}

function decisionHeight({ decisionAltitudeFt, touchdownZoneElevationFt }: FacilityGeometry): Issue[] {
  if (decisionAltitudeFt === null) return [];
  const heightFt = decisionAltitudeFt - touchdownZoneElevationFt;
  if (!isOutside(heightFt, USUAL_DECISION_HEIGHT_FT)) return [];
  const message = `minimums.decisionAltitudeFt is ${whole(decisionAltitudeFt)}, ${whole(heightFt)} ft above the touchdown zone at ${whole(touchdownZoneElevationFt)}`;
  const tip =
    'A decision altitude counts from sea level, and is mostly 200 ft or more above the touchdown zone.';
  return [issue('warning', 'facility-decision-altitude-unusual', `${message}.`, { tip })];
}

/** Localizers have odd tenths, with or without 50 kHz more; even tenths are VORs (ICAO Annex 10 Vol V; from memory). */
function frequency({ frequencyMHz }: Facility): Issue[] {
  if (frequencyMHz === undefined) return [];
  const steps = Math.round(frequencyMHz * 20);
  const onStep = Math.abs(frequencyMHz * 20 - steps) < 1e-6;
  if (onStep && Math.floor(steps / 2) % 2 === 1) return [];
  const message = `frequencyMHz is ${decimal(frequencyMHz, 3)}, which is no localizer channel: those have an odd first decimal, as 110.30 or 110.35`;
  return [issue('warning', 'facility-frequency-unusual', `${message}.`, { tip: 'Check frequencyMHz.' })];
}
