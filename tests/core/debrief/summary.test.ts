import { describe, expect, it } from 'vitest';
import { standardById } from '../../../core/standard/standards.ts';
import type { Stated } from '../../../core/standard/stated.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { debriefsCsv } from '../../../core/report/debrief-csv.ts';
import type { Drawing } from '../../support/flight/drawn-flight.ts';
import { debriefOf } from './drawn.ts';

/** 90 kt from 8 NM, the fix 120 s after the start, decision altitude about 302 s after it; see `debriefOf`. */
const sentence = (drawing: Partial<Drawing> = {}, stated: Partial<Stated> = {}) =>
  debriefOf(drawing, {}, stated).approaches[0]!.summary;
const bump =
  (fromS: number, toS: number, size: number) =>
  ({ timeS }: { timeS: number }) =>
    timeS >= fromS && timeS <= toS ? size : 0;
const END = 'the log ends before the approach does.';

describe('the first sentence of a debrief', () => {
  it('names both gates, and both needles when nothing was lost', () => {
    expect(sentence()).toBe(
      `Stable at 1,000 ft and 500 ft as far as seen (without airspeed and bank); both needles within ¾ scale on final; ${END}`,
    );
  });

  it('names of the gates that held what was not seen, and only that', () => {
    const seen = (columns: object, stated: Partial<Stated>) =>
      debriefOf(
        {},
        {
          columns: (_, { length }) =>
            Object.fromEntries(
              Object.entries(columns).map(([name, value]) => [
                name,
                Array<number>(length).fill(value as number),
              ]),
            ),
        },
        stated,
      ).approaches[0]!.summary;
    const both = { airspeedIndicatedKt: 90, bankDeg: 0 };
    expect(seen(both, { targetAirspeedKt: 90 })).toMatch(/^Stable at 1,000 ft and 500 ft; /);
    expect(seen(both, {})).toMatch(/^Stable at 1,000 ft and 500 ft as far as seen \(without airspeed\); /);
    expect(seen({ airspeedIndicatedKt: 90 }, { targetAirspeedKt: 90 })).toMatch(
      / as far as seen \(without bank\); /,
    );
    // One that failed has failed whatever else was not seen.
    expect(sentence({ localizerFullScale: bump(170, 400, 0.9) })).not.toContain('as far as seen');
  });

  it('says which side was lost, at what height, and by when it was back', () => {
    // 3° at 90 kt is 477 ft/min (FAA rate of descent table: 480): 150 s before decision altitude, 200 ft above the
    // touchdown zone, it stands near 1,400 ft, and 20 s later 160 ft lower.
    const text = sentence({ localizerFullScale: bump(150, 170, 0.95) });
    const [, lost, back] =
      /lost the localizer to the right at ([\d,]+) ft, back within ¾ scale by ([\d,]+) ft/.exec(text)!;
    const feet = (words: string) => Number(words.replace(',', ''));
    expect(feet(lost!) - feet(back!)).toBeGreaterThanOrEqual(150);
    expect(feet(lost!) - feet(back!)).toBeLessThanOrEqual(180);
    expect(text).not.toContain('glidepath');
  });

  it('calls a short shallow one promptly corrected, and counts the others', () => {
    const twice = ({ timeS }: { timeS: number }) =>
      (timeS >= 150 && timeS <= 152) || (timeS >= 200 && timeS <= 201) ? -0.8 : 0;
    expect(sentence({ glidepathFullScale: twice })).toMatch(
      /lost the glidepath low at [\d,]+ ft, promptly back within ¾ scale by [\d,]+ ft, and once more; /,
    );
    const often = ({ timeS }: { timeS: number }) => (timeS > 150 && timeS < 210 && timeS % 20 < 8 ? 0.9 : 0);
    expect(sentence({ localizerFullScale: often })).toMatch(
      /back within ¾ scale by [\d,]+ ft, and 2 times more; /,
    );
  });

  it('says where final began out of limits, and what never came back', () => {
    expect(sentence({ localizerFullScale: bump(100, 140, -0.9) })).toContain(
      'came to final left of the localizer, back within ¾ scale by ',
    );
    expect(sentence({ glidepathFullScale: bump(280, 400, 0.9) })).toContain(
      ', and not back before final ended',
    );
  });

  it('does not pass over what was flown on final before a needle counts', () => {
    // Not met before the fix (120 s): the glidepath counts half a mile, 20 s, later.
    const highAtFix = ({ timeS }: { timeS: number }) => (timeS <= 132 ? 0.9 : 0);
    const debrief = debriefOf({ glidepathFullScale: highAtFix });
    expect(debrief.approaches[0]!.summary).toContain(
      'came to final high on the glidepath, then both needles within ¾ scale; ',
    );
    const text = debriefText(debrief);
    expect(text).toMatch(/Glidepath on final .* within ¾ scale, counted from \d\d:\d\d:\d\d/s);
    expect(text).toMatch(/beyond the limit, high 0\.90 at most, before it counted/);
  });

  it('says of a standard that speaks only below its gate where it looked', () => {
    const gated = debriefOf({}, {}, { vrefKt: 70 }, standardById('stabilized-approach')!).approaches[0]!;
    expect(gated.summary).toContain('both needles within ½ scale below 500 ft; ');
    const high = debriefOf(
      { glidepathFullScale: bump(230, 285, 0.6) },
      {},
      {},
      standardById('stabilized-approach')!,
    );
    expect(high.approaches[0]!.summary).toContain(
      'passed 500 ft high on the glidepath, back within ½ scale by ',
    );
  });

  it('does not say as sure what the error of the log leaves open', () => {
    // A phone's 66 ft are 0.5 of full scale at 1.6 NM and 1 at decision altitude.
    const byPhone = (size: number, fromS = 280) =>
      debriefOf({ glidepathFullScale: bump(fromS, 400, size) }, { receiver: 'phone' });
    expect(byPhone(0.5).approaches[0]!.summary).toContain(
      'both needles within ¾ scale on final, but the glidepath not surely',
    );
    expect(byPhone(0.85).approaches[0]!.summary).toMatch(
      /lost the glidepath high at [\d,]+ ft by no more than its error, and not back/,
    );
    expect(byPhone(0.5, 230).approaches[0]!.summary).toContain(
      'Stable at 1,000 ft as far as seen (without airspeed and bank), unclear at 500 ft',
    );
    const text = debriefText(byPhone(0.85)).replaceAll(/\s+/g, ' ');
    expect(text).toContain('after it glidepath perhaps outside for 3 s or more, given its error');
    expect(text).not.toContain('after it glidepath outside');
  });

  it('tells of a gate that was failed, and of what else than a needle was lost after one that held', () => {
    expect(sentence({ localizerFullScale: bump(215, 400, 0.9) })).toMatch(
      /^Stable at 1,000 ft as far as seen \(without airspeed and bank\), not at 500 ft; /,
    );
    expect(sentence({ localizerFullScale: bump(170, 400, 0.9) })).toMatch(
      /^Not stable at 1,000 ft or 500 ft; /,
    );
  });

  it('tells joining inside the fix from losing the localizer, unless it was vectored', () => {
    const joined = {
      fromNm: 4.6,
      localizerFullScale: ({ timeS }: { timeS: number }) => Math.max(0, 1.15 - timeS / 20),
    };
    expect(sentence(joined)).toContain('joined the localizer inside the fix, established by ');
    expect(sentence(joined, { vectoredInsideFix: true })).toContain(
      'vectored onto the localizer inside the fix, then both needles within ¾ scale; ',
    );
  });
});

describe('the first sentence of a log that begins inside the fix', () => {
  it('says so, and nothing of joining', () => {
    expect(sentence({ fromNm: 4.5 })).toBe(
      'Stable at 1,000 ft and 500 ft as far as seen (without airspeed and bank); the log begins inside the final approach fix; ' +
        `both needles within ¾ scale on final; ${END}`,
    );
    const off = sentence({ fromNm: 4.5, localizerFullScale: ({ timeS }) => Math.max(0, 0.95 - timeS / 40) });
    expect(off).toMatch(
      /; the log begins inside the final approach fix; right of the localizer at first, back within ¾ scale by 1,4\d0 ft; /,
    );
  });

  it('says where the glidepath was before it counted', () => {
    const high = sentence({ fromNm: 4.5, glidepathFullScale: ({ timeS }) => Math.max(0, 0.9 - timeS / 20) });
    expect(high).toContain('fix; high on the glidepath at first, then both needles within ¾ scale; ');
  });
});

describe('a safety limit that was crossed', () => {
  it('stands right below the first sentence, and in the debrief as data', () => {
    const crossed = debriefOf({ localizerFullScale: bump(180, 190, 1.1) });
    expect(crossed.approaches[0]!.safety).toEqual([
      expect.stringMatching(/^full scale right of the localizer for \d+ s on final, without going around$/),
    ]);
    const [head] = debriefText(crossed).split('\n\n');
    expect(head!.replaceAll('\n', ' ')).toMatch(
      /\. A safety limit was crossed: full scale right of the localizer for \d+ s on final, without going around\.$/,
    );
  });

  it('there was none of is not spoken of', () => {
    const none = debriefOf({ glidepathFullScale: bump(180, 190, 0.9) });
    expect(none.approaches[0]!.safety).toEqual([]);
    expect(debriefText(none)).not.toContain('safety limit');
  });
});

describe('a debrief of what was stated', () => {
  const all: Partial<Stated> = {
    conditions: 'imc',
    visualReferenceAtMinimums: 'not-seen',
    targetAirspeedKt: 90,
    interceptAirspeedKt: 100,
    vrefKt: 70,
    assignedAltitudeFt: 2500,
    hood: false,
    flown: 'coupled',
    vectoredInsideFix: true,
    engineOut: true,
    turbulence: 'light',
    instructorFlew: [
      { startS: Date.parse('2026-03-14T09:03:00Z') / 1000, endS: Date.parse('2026-03-14T09:03:20Z') / 1000 },
    ],
  };

  it('prints every statement, and nothing when there was none', () => {
    const text = debriefText(debriefOf({}, {}, all)).replaceAll('\n', ' ');
    expect(text).toContain(
      'Stated: instrument conditions, runway not in sight at minimums, target airspeed on final 90 kt, ' +
        'airspeed before final 100 kt, Vref 70 kt, assigned altitude 2500 ft, without a hood, coupled, vectored inside ' +
        "the fix, engine out, turbulence: light, instructor's controls 09:03:00 to 09:03:20.",
    );
    expect(debriefText(debriefOf({}, {}, { hood: true }))).toContain('Stated: under the hood.');
    expect(debriefText(debriefOf())).not.toContain('Stated');
  });

  it('leaves out what the instructor flew, and says what had been lost in it', () => {
    const lost = { localizerFullScale: bump(182, 198, 0.95) };
    expect(sentence(lost)).toContain('lost the localizer');
    expect(sentence(lost, all)).not.toContain('lost the localizer');
  });

  const beganS = Date.parse(debriefOf().log.startUtc) / 1000;
  const flew = (fromS: number, toS: number): Partial<Stated> => {
    return { instructorFlew: [{ startS: beganS + fromS, endS: beganS + toS }] };
  };
  const high = { glidepathFullScale: bump(0, 180, 0.9) };

  it('tells how the student was handed the aircraft, and not how the instructor came to final', () => {
    expect(sentence(high)).toContain('came to final high on the glidepath, back within ¾ scale by ');
    expect(sentence(high, flew(100, 160))).toContain(
      'was handed the aircraft high on the glidepath, back within ¾ scale by ',
    );
    expect(sentence(high, flew(100, 190))).toContain('both needles within ¾ scale on final; ');
    const text = debriefText(debriefOf(high, {}, flew(100, 160))).replaceAll(/\s+/g, ' ');
    expect(text).toMatch(/counted from \d\d:\d\d:\d\d, when the instructor handed it over/);
    expect(text).not.toContain('when there had been time to get on it');
  });

  it('takes the instructor taking over for no recovery, and what was handed over unmended for no second loss', () => {
    const parted = sentence(high, flew(160, 170));
    expect(parted).toMatch(
      /came to final high on the glidepath, still high when the instructor handed it over, back within ¾ scale by [\d,]+ ft; /,
    );
    expect(parted).not.toContain('once more');
    // 400 s: to the end.
    const taken = sentence(high, flew(160, 400));
    expect(taken).toMatch(
      /Came to final high on the glidepath, until the instructor took over at [\d,]+ ft; /,
    );
    expect(taken).not.toContain('back within');
    const short = debriefOf({ glidepathFullScale: bump(156, 180, 0.8) }, {}, flew(160, 190));
    expect(short.approaches[0]!.criteria.find(({ id }) => id === 'glidepath-final')!.why).toMatch(
      /^beyond ¾ scale for \d s, until the instructor took over$/,
    );
  });

  it('counts once more what was lost apart from the instructor', () => {
    const both = ({ timeS }: { timeS: number }) =>
      timeS <= 180 ? 0.9 : timeS > 220 && timeS < 240 ? 0.8 : 0;
    expect(sentence({ glidepathFullScale: both }, flew(160, 170))).toMatch(
      /still high when the instructor handed it over, back within ¾ scale by [\d,]+ ft, and once more; /,
    );
  });

  it('takes the edge of a gap for no recovery', () => {
    const keep = (tenth: number) => tenth % 10 === 0 && (tenth < 1700 || tenth > 2000);
    expect(debriefOf({ glidepathFullScale: bump(150, 190, 0.9) }, { keep }).approaches[0]!.summary).toMatch(
      /lost the glidepath high at [\d,]+ ft, and not back when the log breaks off at [\d,]+ ft/,
    );
  });
});

describe('a debrief as a table', () => {
  it('quotes what needs it, and leaves an empty cell for what is not known', () => {
    const debrief = debriefOf();
    const [criterion, ...rest] = debrief.approaches[0]!.criteria;
    const odd = { ...criterion!, title: 'a "quoted", odd\ntitle', measured: null };
    const table = debriefsCsv([
      { ...debrief, approaches: [{ ...debrief.approaches[0]!, criteria: [odd, ...rest] }] },
    ]);
    expect(table).toContain('"a ""quoted"", odd\ntitle",-0.75,0.75,full scale,,');
  });

  it('ends with the miles of each criterion, assessed and beyond its limit', () => {
    const debrief = debriefOf({
      glidepathFullScale: ({ timeS }) => (timeS > 200 && timeS < 215 ? -0.95 : 0),
    });
    const [head, ...rows] = debriefsCsv([debrief]).trimEnd().split('\n');
    expect(head).toMatch(/,score,assessedNm,outsideNm$/);
    const { criteria } = debrief.approaches[0]!;
    const [glidepath, stability] = ['glidepath-final', 'stability'].map(
      (id) => rows[criteria.findIndex((criterion) => criterion.id === id)]!,
    );
    const { assessedNm, outsideNm } = criteria.find(({ id }) => id === 'glidepath-final')!;
    expect(outsideNm).toBeGreaterThan(0.3);
    expect(glidepath).toMatch(new RegExp(`,${assessedNm},${outsideNm}$`));
    expect(stability).toMatch(/,,$/);
  });
});
