import { describe, expect, it } from 'vitest';
import { shortDebrief } from '../../../core/debrief/short-debrief.ts';
import { madeFacility, madeFlight, straightIn, type MadeFix } from './made-approach.ts';

const FACILITY = madeFacility();

function debriefOf(fixes: MadeFix[], facility = FACILITY, columns = {}) {
  const { track, deviations } = madeFlight(fixes, columns);
  return shortDebrief(track, deviations, facility);
}

describe('the short debrief', () => {
  it('finds the moments of the fix and of decision altitude between fixes', () => {
    const debrief = debriefOf(straightIn())!;
    // 1.6 NM at 30 s a mile, and 200 ft at 300 ft a mile: 48 s and 178 s after the start.
    expect(debrief.events).toMatchObject([
      { kind: 'final-approach-fix', utc: '2026-05-04T09:00:48Z', altitudeSource: 'geometric' },
      { kind: 'decision-altitude', utc: '2026-05-04T09:02:58Z' },
    ]);
    expect(debrief.events[0]!.distanceToThresholdNm).toBeCloseTo(5, 9);
    expect(debrief.events[0]!.altitudeFt).toBeCloseTo(1500, 6);
    expect(debrief.events[1]!.altitudeFt).toBeCloseTo(200, 6);
    expect(debrief.events[0]!.unknown).toEqual({ airspeedKt: 'The log has no indicated airspeed.' });
    expect(debrief.segments[0]).toMatchObject({
      startUtc: '2026-05-04T09:00:48Z',
      endUtc: '2026-05-04T09:02:58Z',
      unrecordedS: 0,
    });
  });

  it('is met when neither needle was beyond ¾ scale, exactly ¾ included', () => {
    const debrief = debriefOf(straightIn(() => ({ localizer: 0.75, glidepath: -0.75 })))!;
    expect(debrief.criteria.map(({ verdict }) => verdict)).toEqual(['met', 'met']);
    expect(debrief.criteria[0]).toMatchObject({ limit: 0.75, measured: 0.75 });
    expect(debrief.summary).toBe('Both needles stayed within ¾ scale from the fix to decision altitude.');
  });

  it('is not met past the edge, with the seconds, the depth and the side', () => {
    const low = (fix: MadeFix) =>
      Math.abs(fix.toGoNm - 3) < 0.2501 ? { glidepath: -0.95 } : { glidepath: -0.55 };
    const debrief = debriefOf(straightIn(low))!;
    const [localizer, glidepath] = debrief.criteria;
    expect(localizer!.verdict).toBe('met');
    // 15 intervals of 1 s at -0.95, and half of the interval on each side of them.
    expect(glidepath).toMatchObject({ verdict: 'not-met', measured: 0.95 });
    expect(glidepath!.timeOutsideS.best).toBeCloseTo(15, 6);
    expect(glidepath!.why).toBe('beyond ¾ scale for 15 s');
    expect(debrief.segments[0]!.glidepath.excursions).toMatchObject([{ side: 'low', peakFullScale: -0.95 }]);
    expect(debrief.summary).toBe('On final the glidepath was beyond ¾ scale for 15 s.');
  });

  it('says "less than 1 s" and names both needles and their sides', () => {
    const fixes = straightIn();
    fixes[100]!.localizer = 0.8;
    fixes[120]!.glidepath = 0.8;
    fixes[140]!.localizer = -0.8;
    const debrief = debriefOf(fixes)!;
    expect(debrief.summary).toBe(
      'On final the localizer was beyond ¾ scale for less than 1 s, and the glidepath was beyond ¾ scale for less than 1 s.',
    );
    expect(debrief.segments[0]!.localizer.excursions.map(({ side }) => side)).toEqual(['right', 'left']);
    expect(debrief.segments[0]!.glidepath.excursions.map(({ side }) => side)).toEqual(['high']);
  });

  it('does not count what was flown before the fix or below decision altitude', () => {
    const wild = (fix: MadeFix) =>
      fix.toGoNm > 5.001 || fix.heightFt < 185 ? { localizer: 0.99, glidepath: 3 } : {};
    const fixes = straightIn(wild);
    // The line from the last fix before it would reach into final.
    fixes[47]!.localizer = fixes[47]!.glidepath = 0;
    expect(debriefOf(fixes)!.criteria.map(({ measured }) => measured)).toEqual([0, 0]);
  });

  it('uses the indicated altitude for decision altitude when it was logged', () => {
    const fixes = straightIn();
    const altitudeIndicatedFt = Float64Array.from(fixes, ({ heightFt }) => heightFt - 100);
    const debrief = debriefOf(fixes, FACILITY, { altitudeIndicatedFt })!;
    expect(debrief.events[1]).toMatchObject({ altitudeSource: 'indicated', utc: '2026-05-04T09:02:48Z' });
  });

  it('does not assess a final that was not recorded to decision altitude, unless it was beyond already', () => {
    const short = straightIn().filter(({ heightFt }) => heightFt > 400);
    const within = debriefOf(short)!;
    expect(within.criteria[0]).toMatchObject({
      verdict: 'not-assessed',
      why: 'final was not recorded to decision altitude',
    });
    expect(within.summary).toBe(
      'Neither needle was beyond ¾ scale, but final was not recorded to decision altitude.',
    );
    short[100]!.localizer = 0.9;
    expect(debriefOf(short)!.criteria[0]!.verdict).toBe('not-met');
  });

  it('without a decision altitude assesses nothing as met', () => {
    const debrief = debriefOf(straightIn(), madeFacility({ minimums: {} }))!;
    expect(debrief.criteria[0]!.verdict).toBe('not-assessed');
    expect(debrief.events.map(({ kind }) => kind)).toEqual(['final-approach-fix']);
  });

  it('takes a gap for unrecorded time, neither inside nor outside', () => {
    const holed = straightIn().map((fix, i) => ({ ...fix, timeS: 1_800_000_000 + i }));
    holed.splice(90, 20);
    const debrief = debriefOf(holed)!;
    expect(debrief.segments[0]!.unrecordedS).toBeCloseTo(21, 6);
    expect(debrief.criteria[0]).toMatchObject({
      verdict: 'not-assessed',
      why: '21 s of final were not recorded',
    });
  });

  it('has no glidepath figures where no height was recorded, and says so', () => {
    const debrief = debriefOf(straightIn((fix) => (fix.toGoNm > 0.66 ? { glidepath: NaN } : {})))!;
    const { glidepath } = debrief.segments[0]!;
    expect(glidepath).toMatchObject({ meanFullScale: null, rmsFullScale: null, maxAbsFullScale: null });
    expect(glidepath.unknown.rmsFullScale).toBe('Nothing of this needle was recorded on final.');
    expect(debrief.events[0]).toMatchObject({
      glidepathFullScale: null,
      unknown: { glidepathFullScale: 'Not recorded at this moment.' },
    });
  });

  it('begins at the start of a run that joined inside the fix', () => {
    const debrief = debriefOf(straightIn().filter(({ toGoNm }) => toGoNm < 4))!;
    expect(debrief.events.map(({ kind }) => kind)).toEqual(['decision-altitude']);
    expect(debrief.segments[0]!.startUtc).toBe(debrief.startUtc);
  });
});

describe('the run that is debriefed', () => {
  it('is the one that ends lowest', () => {
    const first = straightIn().filter(({ heightFt }) => heightFt > 700);
    const away = Array.from({ length: 30 }, () => ({ toGoNm: 3, heightFt: 1500, trackTrueDeg: 270 }));
    const second = straightIn();
    const debrief = debriefOf([...first, ...away, ...second])!;
    expect(debrief.startUtc).toBe(
      new Date(Date.UTC(2026, 4, 4, 9) + (first.length + 30) * 1000).toISOString().replace('.000', ''),
    );
    expect(debriefOf([...second, ...away, ...first])!.startUtc).toBe('2026-05-04T09:00:00Z');
  });

  it.each([
    ['flown the other way', () => ({ trackTrueDeg: 270 })],
    ['flown across at more than 45°', () => ({ trackTrueDeg: 135.1 })],
    ['never on the localizer', () => ({ localizer: 1.01 })],
    ['on the localizer only inside a mile', (fix: MadeFix) => ({ localizer: fix.toGoNm < 1 ? 0 : 2 })],
    ['farther than 25 NM from the antenna', () => ({ antennaNm: 25.1 })],
    ['past the threshold', (fix: MadeFix) => ({ toGoNm: -fix.toGoNm - 0.1 })],
    ['ended before the fix', (fix: MadeFix) => ({ toGoNm: fix.toGoNm + 10, antennaNm: 20 })],
  ])('is none that was %s', (_name, change) => {
    expect(debriefOf(straightIn(change))).toBeNull();
  });

  it('may be flown at exactly 45° and on exactly full scale', () => {
    expect(debriefOf(straightIn(() => ({ trackTrueDeg: 45, localizer: -1 })))).not.toBeNull();
  });
});
