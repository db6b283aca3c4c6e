import { geodesicBetween, geodesicFrom, type Position } from '../earth/geodesic.ts';
import { issue } from '../issue/issue.ts';
import { FEET_PER_METRE, FEET_PER_NM, METRES_PER_FOOT } from '../units/units.ts';
import type { Drafted } from './drafted.ts';
import { draftedFrom, type Leaf } from './leaves.ts';
import { runwayDoubts } from './runway-doubts.ts';
import type { RunwayEnd, RunwayRow } from './runway-table.ts';

/** Which end of a row is landed over. */
export type LandedEnd = 'low' | 'high';

const DESIGNATOR = /^(?:0?[1-9]|[12]\d|3[0-6])[LCR]?T?$/;
/** Minutes of arc in a degree, of latitude a nautical mile each. */
const MINUTES = 60;
/** Half of one: how far off a heading of whole degrees may be. */
const WHOLE_DEGREES = 0.5;

/**
 * What a row of the open airports dataset says of the runway landed over one of its ends. A displaced threshold is
 * worked in: the dataset's positions are those of the ends of the pavement, its length is that of the whole pavement
 * (its data dictionary), and a facility's begin at the landing threshold. What the row does not say is left out.
 */
export function draftFromRunway(row: RunwayRow, end: LandedEnd): Drafted {
  const [near, far] = end === 'low' ? [row.low, row.high] : [row.high, row.low];
  const source = `open airports dataset, runways table (line ${row.line})`;
  const threshold = thresholdOf(near, far, row.lengthFt);
  const displaced = near.displacedThresholdFt;
  const moved = `${source}: the end of the pavement, moved ${displaced} ft along the runway to the displaced threshold`;
  const less = `${source}: the whole pavement less ${displaced} ft before the displaced threshold`;
  const isNamed = row.airportIdent !== '' && near.ident !== '';
  const isBothPlaced = near.position !== null && far.position !== null;
  const of = (path: string, value: string | number | null, origin = source): Leaf[] =>
    value === null ? [] : [{ path, value, origin }];
  const leaves = [
    ...of(
      'name',
      isNamed ? `${row.airportIdent} ${near.ident}` : null,
      `${source}: its airport and this end`,
    ),
    ...of('runway.designator', DESIGNATOR.test(near.ident) ? near.ident : null),
    ...placeLeaves('threshold', threshold, displaced === 0 ? source : moved),
    ...placeLeaves('farEnd', placeOf(far), source),
    // From end to end the direction is known finer than the whole degrees that the table gives.
    ...of('runway.trueBearingDeg', isBothPlaced ? null : near.headingTrueDeg),
    ...of('runway.lengthFt', landingLengthFt(row, near), displaced === 0 ? source : less),
    ...of('runway.widthFt', row.widthFt),
  ];
  // Half a step of latitude and half of one of longitude, which is no longer.
  const offFt = Math.SQRT2 * row.halfStepDeg * MINUTES * FEET_PER_NM;
  return draftedFrom(leaves, {
    issues: [SECOND_HAND, ...runwayDoubts(row, near, far, threshold)],
    mayBeOff: { 'runway.threshold': offFt, 'runway.farEnd': offFt, 'runway.trueBearingDeg': WHOLE_DEGREES },
  });
}

function placeLeaves(key: 'threshold' | 'farEnd', place: PartOfPlace | null, origin: string): Leaf[] {
  if (place === null) return [];
  const { position, elevationFt } = place;
  const values = {
    latDeg: position.latDeg,
    lonDeg: position.lonDeg,
    ...(elevationFt !== null && { elevationFt }),
  };
  return Object.entries(values).map(([leaf, value]) => ({ path: `runway.${key}.${leaf}`, value, origin }));
}

/** The landing threshold, its elevation on the straight line between the ends; null where it cannot be told. */
function thresholdOf(near: RunwayEnd, far: RunwayEnd, lengthFt: number | null): PartOfPlace | null {
  const { position, displacedThresholdFt: displacedFt } = near;
  if (position === null || displacedFt === null) return null;
  if (displacedFt === 0) return placeOf(near);
  const line = far.position === null ? null : geodesicBetween(position, far.position);
  const bearingDeg = line?.startBearingDeg ?? near.headingTrueDeg;
  const betweenFt = line === null ? lengthFt : line.distanceM * FEET_PER_METRE;
  if (bearingDeg === null || betweenFt === null || displacedFt >= betweenFt) return null;
  const { latDeg, lonDeg } = geodesicFrom(position, bearingDeg, displacedFt * METRES_PER_FOOT);
  const isSloped = near.elevationFt !== null && far.elevationFt !== null;
  const rise = isSloped ? (far.elevationFt! - near.elevationFt!) * (displacedFt / betweenFt) : 0;
  return {
    position: { latDeg: seventh(latDeg), lonDeg: seventh(lonDeg) },
    elevationFt: isSloped ? Math.round((near.elevationFt! + rise) * 10) / 10 : null,
  };
}

function landingLengthFt({ lengthFt }: RunwayRow, { displacedThresholdFt }: RunwayEnd): number | null {
  if (lengthFt === null || displacedThresholdFt === null || displacedThresholdFt >= lengthFt) return null;
  return lengthFt - displacedThresholdFt;
}

interface PartOfPlace {
  readonly position: Position;
  readonly elevationFt: number | null;
}

function placeOf({ position, elevationFt }: RunwayEnd): PartOfPlace | null {
  return position === null ? null : { position, elevationFt };
}

/** A centimetre: what is worked out has no more digits than a chart would have. */
function seventh(deg: number): number {
  return Number(deg.toFixed(7));
}

const SECOND_HAND = issue(
  'caution',
  'runway-second-hand',
  'The open airports dataset is second-hand: anybody may enter values, and nobody vouches for them.',
  { tip: 'Check every value against the official publication of the aerodrome.' },
);
