import { describe, expect, it } from 'vitest';
import { NOTHING_STATED } from '../../../core/standard/stated.ts';
import { STATED_OPTIONS, statedOf } from '../../../electron/cli/stated-options.ts';

const of = (options: Record<string, string[]>) => statedOf({ files: [], options });
const stated = (options: Record<string, string[]>) => {
  const outcome = of(options);
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return outcome.value;
};

describe('what is stated on the command line', () => {
  it('is nothing when nothing is said', () => {
    expect(stated({})).toEqual(NOTHING_STATED);
  });

  it('is taken word for word, each for itself and for nothing else', () => {
    expect(
      stated({
        'target-airspeed': ['90'],
        'intercept-airspeed': ['100.5'],
        vref: ['72'],
        'assigned-altitude': ['-20'],
        conditions: ['simulated'],
        runway: ['not-seen'],
        'vectored-inside-fix': ['yes'],
        'engine-out': ['no'],
        wind: ['250/18.5'],
        hood: ['no'],
        flown: ['coupled'],
        turbulence: ['light'],
      }),
    ).toEqual({
      ...NOTHING_STATED,
      targetAirspeedKt: 90,
      interceptAirspeedKt: 100.5,
      vrefKt: 72,
      assignedAltitudeFt: -20,
      conditions: 'simulated',
      visualReferenceAtMinimums: 'not-seen',
      vectoredInsideFix: true,
      engineOut: false,
      wind: { fromTrueDeg: 250, speedKt: 18.5 },
      hood: false,
      flown: 'coupled',
      turbulence: 'light',
    });
    expect(stated({ 'target-airspeed': ['90'] }).vrefKt).toBeNull();
    expect(stated({ hood: ['yes'] }).hood).toBe(true);
    expect(stated({ wind: ['0/0'] }).wind).toEqual({ fromTrueDeg: 0, speedKt: 0 });
    expect(stated({ wind: ['360/100'] }).wind).toEqual({ fromTrueDeg: 360, speedKt: 100 });
  });

  it('takes spans flown by the instructor, in seconds', () => {
    const spans = stated({ 'instructor-flew': ['2026-05-01T09:10:00Z/2026-05-01T09:10:30Z'] }).instructorFlew;
    // 2026-05-01T00:00:00Z is day 20,574 after 1970-01-01: 56 years, 14 leap days, 120 days.
    const startS = 20_574 * 86_400 + 9 * 3600 + 600;
    expect(spans).toEqual([{ startS, endS: startS + 30 }]);
  });

  it('takes room with its reason', () => {
    expect(
      stated({ allow: ['airspeed-final=5: gusts, 15 to 25', 'localizer-final=0.1:weak'] }).allowances,
    ).toEqual([
      { criterion: 'airspeed-final', by: 5, reason: 'gusts, 15 to 25' },
      { criterion: 'localizer-final', by: 0.1, reason: 'weak' },
    ]);
  });

  it.each([
    ['target-airspeed', 'ninety', '--target-airspeed is a number from 30 to 400'],
    ['vref', '0', '--vref is a number from 30 to 400'],
    ['intercept-airspeed', ' ', '--intercept-airspeed is a number'],
    ['assigned-altitude', '99999', '--assigned-altitude is a number from -1500 to 30000'],
    ['wind', '250', '--wind "250" is no wind.'],
    ['wind', '361/10', '--wind "361/10" is no wind.'],
    ['wind', '250/101', '--wind "250/101" is no wind.'],
    ['wind', '250/-5', '--wind "250/-5" is no wind.'],
    ['wind', '25018', '--wind "25018" is no wind.'],
    ['wind', 'calm', '--wind "calm" is no wind.'],
    ['wind', '', '--wind "" is no wind.'],
    ['instructor-flew', '09:10/09:11', '--instructor-flew "09:10/09:11" is no span of time.'],
    ['instructor-flew', '2026-05-01T09:11:00Z/2026-05-01T09:10:00Z', 'is no span of time.'],
    ['instructor-flew', '2026-05-01T09:11:00Z', 'is no span of time.'],
    ['allow', 'airspeed-final=5', 'names no criterion, room and reason.'],
    ['allow', 'airspeed-final=0: none', 'names no criterion, room and reason.'],
  ])('refuses --%s "%s" in a sentence', (option, text, says) => {
    const outcome = of({ [option]: [text] });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.refusal.message).toContain(says);
  });
  it('says of a span without its date how one is written', () => {
    const outcome = of({ 'instructor-flew': ['14:30:30/14:30:40'] });
    expect(outcome.ok ? null : outcome.refusal.tip).toContain('with their date, in UTC, as 2026-05-01T');
    expect(STATED_OPTIONS['instructor-flew']!.value).toContain('each with its date, in UTC');
  });
});
