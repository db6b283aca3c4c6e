import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  settingsOfSample,
  standardOfSample,
  statedOfSample,
} from '../../renderer/state/sample-statements.ts';
import type { Sample } from '../../renderer/state/app-state.ts';
import { standardById } from '../../core/standard/standards.ts';

const { flights } = JSON.parse(readFileSync('samples/catalogue.json', 'utf8')) as { flights: Sample[] };
const named = (file: string) => flights.find((flight) => flight.file === file)!;
/** What this page knows how to state; a sample that says more would be shown otherwise than the command has it. */
const KNOWN = [
  'target-airspeed',
  'vref',
  'runway',
  'conditions',
  'vectored-inside-fix',
  'receiver',
  'standard',
];

describe('what the people of a sample state', () => {
  it('is known to the page, all of it', () => {
    expect(flights.length).toBeGreaterThan(10);
    for (const { stated } of flights) for (const name of Object.keys(stated)) expect(KNOWN).toContain(name);
    for (const sample of flights) expect(standardById(standardOfSample(sample))).toBeDefined();
  });

  it('is read as the command reads it', () => {
    expect(statedOfSample(named('first-approach.csv'))).toEqual({
      targetAirspeedKt: 90,
      vrefKt: null,
      visualReferenceAtMinimums: 'seen',
      conditions: 'simulated',
      vectoredInsideFix: false,
    });
    expect(statedOfSample(named('joined-inside-the-fix.csv')).vectoredInsideFix).toBe(true);
    expect(statedOfSample(named('missed-at-minimums.csv')).visualReferenceAtMinimums).toBe('not-seen');
    expect(standardOfSample(named('missed-at-minimums.csv'))).toBe('skill-test');
    expect(settingsOfSample(named('circled.gpx'))).toEqual({ receiver: 'augmented' });
    expect(settingsOfSample(named('phone.gpx'))).toEqual({});
    expect(statedOfSample(named('phone.gpx'))).toEqual({
      targetAirspeedKt: null,
      vrefKt: null,
      vectoredInsideFix: false,
    });
  });
});
