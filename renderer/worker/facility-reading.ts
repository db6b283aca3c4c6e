import { defineFacility } from '../../core/analyze.ts';
import { checkFacility } from '../../core/facility/contradictions.ts';
import type { FacilityGeometry } from '../../core/facility/derive-geometry.ts';
import { facilityProblems } from '../../core/facility/parse-facility.ts';
import { planShapes } from '../../core/facility/plan-shapes.ts';
import { facilityText } from '../../core/report/facility-text.ts';
import { factsOf } from './facility-facts.ts';
import type { FacilityReading, FacilityText, PlanOutline } from './protocol.ts';

/**
 * What a facility's text says of itself, usable or not.
 *
 * @param onDate decimal year for the magnetic model
 */
export function readingOf({ id, text }: FacilityText, onDate: number): FacilityReading {
  const defined = defineFacility(text, 'The facility');
  if (!defined.ok)
    return {
      id,
      name: '',
      ident: null,
      runway: '',
      issues: [],
      refusal: defined.refusal,
      problems: facilityProblems(text),
      facts: [],
      details: null,
      plan: [],
    };
  const { facility, geometry } = defined.value;
  const issues = checkFacility(facility, geometry, onDate);
  const { name, ident = null, runway } = facility;
  return {
    id,
    name,
    ident,
    runway: runway.designator,
    issues,
    refusal: null,
    problems: [],
    facts: factsOf(facility, geometry, onDate),
    details: facilityText(facility, geometry, issues),
    plan: planOf(geometry),
  };
}

function planOf(geometry: FacilityGeometry): PlanOutline[] {
  return planShapes(geometry).features.map(({ geometry: shape, properties }) => ({
    kind: properties.kind,
    distanceNm: properties.distanceNm ?? null,
    points: (shape.type === 'LineString' ? shape.coordinates : shape.coordinates[0]!) as [number, number][],
  }));
}
