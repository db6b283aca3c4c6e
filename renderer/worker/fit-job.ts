import { defineFacility, type Flight } from '../../core/analyze.ts';
import { findApproaches } from '../../core/approach/find-approaches.ts';
import { flownAt } from '../../core/approach/flown.ts';
import { projectTrack } from '../../core/deviation/project-track.ts';
import type { FacilityGeometry } from '../../core/facility/derive-geometry.ts';
import { draftsLast, isDraftedFrom } from '../../core/facility/drafted-from.ts';
import type { FacilityText } from './protocol.ts';

/**
 * Ids of the facilities that a flight was flown to: those with most approaches first, and drafts that nobody has
 * confirmed behind all others. One that was drafted from this log is none of them.
 */
export function fittingFacilities(facilities: readonly FacilityText[], flight: Flight): string[] {
  const fitting = facilities.flatMap(({ id, text }) => {
    const defined = defineFacility(text, id);
    if (!defined.ok || isDraftedFrom(defined.value.facility, flight.log)) return [];
    const { facility, geometry } = defined.value;
    const count = approachesAt(geometry, flight);
    return count > 0 ? [{ id, facility, count }] : [];
  });
  return draftsLast(fitting.toSorted((a, b) => b.count - a.count)).map(({ id }) => id);
}

function approachesAt(geometry: FacilityGeometry, { track }: Flight): number {
  const flown = flownAt(track, projectTrack(track, geometry), geometry);
  return findApproaches(flown, geometry.touchdownZoneElevationFt).approaches.length;
}
