import { describe, expect, it } from 'vitest';
import { allowableOf } from '../../../core/standard/allowable.ts';
import { SHIPPED } from '../../../core/standard/standards.ts';
import { LIGHT_AIRCRAFT } from '../../../core/standard/shipped/light-aircraft.ts';
import { INSTRUMENT_RATING } from '../../../core/standard/shipped/instrument-rating.ts';
import { debriefOf } from '../debrief/drawn.ts';
import { FULL, standardOf } from './full-standard.ts';

describe('what more room can be allowed on', () => {
  it('is what the standard limits, and nothing that it does not', () => {
    expect(allowableOf(INSTRUMENT_RATING)).toEqual([
      { id: 'localizer-before-final', title: 'Localizer before final', unit: 'full scale' },
      { id: 'altitude-before-final', title: 'Altitude before final', unit: 'ft' },
      { id: 'localizer-final', title: 'Localizer on final', unit: 'full scale' },
      { id: 'glidepath-final', title: 'Glidepath on final', unit: 'full scale' },
      { id: 'airspeed-final', title: 'Airspeed on final', unit: 'kt' },
    ]);
    expect(allowableOf(LIGHT_AIRCRAFT).map(({ id }) => id)).toEqual(['airspeed-final']);
    expect(allowableOf(standardOf(FULL)).slice(-2)).toEqual([
      { id: 'bank', title: 'Bank on final', unit: 'deg' },
      { id: 'groundspeed', title: 'Groundspeed', unit: 'kt' },
    ]);
  });

  it.each([...SHIPPED, standardOf(FULL)])('has the title and unit that a debrief by $id has', (standard) => {
    const stated = { targetAirspeedKt: 90, vrefKt: 80, assignedAltitudeFt: 2000 };
    const { criteria } = debriefOf({}, {}, stated, standard).approaches[0]!;
    for (const { id, title, unit } of allowableOf(standard)) {
      const judged = criteria.find((criterion) => criterion.id === id)!;
      expect(judged.title).toBe(title);
      expect(judged.limit ?? judged.upper ?? judged.lower).not.toBeNull();
      expect(judged.unit).toBe(unit);
    }
  });
});
