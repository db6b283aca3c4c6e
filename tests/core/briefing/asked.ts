import type { Briefing, BriefingAsked } from '../../../core/briefing/briefing.ts';
import { briefingOf } from '../../../core/briefing/briefing-of.ts';
import { facilityOf, geometryOf } from '../facility/full-facility.ts';

const NOTHING_ASKED: BriefingAsked = {
  groundspeedKt: null,
  airspeedKt: null,
  wind: null,
  temperatureC: null,
  decisionAltitudeFt: null,
  gateDatum: 'touchdown-zone',
  dots: 2,
  objective: null,
  goals: [],
  enteredBy: null,
  enteredOn: null,
};

/** A briefing at a facility of these values, in the middle of 2025. */
export function briefed(values: object, asked: Partial<BriefingAsked> = {}): Briefing {
  const on = { facility: facilityOf(values), geometry: geometryOf(values) };
  const briefing = briefingOf(on, { ...NOTHING_ASKED, ...asked }, 2025.5);
  if (!briefing.ok) throw new Error(briefing.refusal.message);
  return briefing.value;
}
