import { describe, expect, it } from 'vitest';
import { deriveGeometry } from '../../../core/facility/derive-geometry.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import cases from '../../reference/geometry-cases.json' with { type: 'json' };

/** Source: computed with PROJ and GeographicLib through pyproj (reference/geometry-cases.json); status computed. */
describe('fourteen facilities agree with an independent computation', () => {
  it.each(cases.cases.map((each) => [each.facility.name, each] as const))(
    '%s',
    (_, { facility, derived }) => {
      const parsed = parseFacility(JSON.stringify(facility), 'case.json');
      if (!parsed.ok) throw new Error(parsed.refusal.message);
      const geometry = deriveGeometry(parsed.value);
      const angles = ['courseTrueDeg', 'localizerFullScaleDeg', 'glidepathFullScaleDeg'] as const;
      for (const key of angles) expect(Math.abs(geometry[key] - derived[key])).toBeLessThan(1e-9);
      for (const key of ['localizerAntenna', 'glidepathOrigin'] as const) {
        expect(Math.abs(geometry[key].latDeg - derived[key].latDeg)).toBeLessThan(1e-9);
        expect(Math.abs(geometry[key].lonDeg - derived[key].lonDeg)).toBeLessThan(1e-9);
      }
    },
  );
});
