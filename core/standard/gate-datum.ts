import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import type { GateLimits } from './standard.ts';

/**
 * The elevation that a standard counts its gates from, feet above mean sea level. An airport elevation that the
 * facility does not give is taken as the touchdown zone's.
 */
export function gateDatumFt(
  { gates }: { readonly gates: Pick<GateLimits, 'datum'> },
  geometry: FacilityGeometry,
): number {
  if (gates.datum === 'threshold') return geometry.threshold.elevationFt;
  if (gates.datum === 'airport') return geometry.airportElevationFt ?? geometry.touchdownZoneElevationFt;
  return geometry.touchdownZoneElevationFt;
}
