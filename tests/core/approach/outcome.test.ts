import { describe, expect, it } from 'vitest';
import { findEnding } from '../../../core/approach/outcome.ts';
import { findPasses } from '../../../core/approach/passes.ts';
import { makeFlown, type Making } from './make-flown.ts';

const DECISION_FT = 330;
/** Down from 1,500 ft to a lowest height at 100 s and up again at 10 ft a second, altitudes above sea level. */
const downTo = (lowestFt: number) => (s: number) =>
  -100 + (s <= 100 ? lowestFt + (100 - s) * 10 : lowestFt + (s - 100) * 10);

const ending = (making: Making, decisionFt: number | null = DECISION_FT) => {
  const flown = makeFlown({ untilS: 200, ...making });
  // Up to the last fix on the scale, and what follows tells how it ended.
  return findEnding(flown, findPasses(flown)[0]!, 0, decisionFt);
};
const outcome = (making: Making, decisionFt?: number | null) => ending(making, decisionFt).outcome;

describe('a climb after final began', () => {
  it('from more than 50 ft below decision altitude is a low approach, and else a missed one', () => {
    expect(outcome({ heightFt: downTo(280) })).toBe('missed-approach');
    expect(outcome({ heightFt: downTo(279.9) })).toBe('low-approach');
    expect(outcome({ heightFt: downTo(251) })).toBe('low-approach');
    expect(outcome({ heightFt: downTo(340) })).toBe('missed-approach');
  });

  it('is judged by the altimeter where there is one', () => {
    const heightFt = downTo(300);
    const indicatedFt = (s: number) => heightFt(s) + 100 - 25;
    expect(outcome({ heightFt, indicatedFt })).toBe('low-approach');
    expect(outcome({ heightFt })).toBe('missed-approach');
  });

  it('is no low approach where no decision altitude is known', () => {
    expect(outcome({ heightFt: downTo(150) }, null)).toBe('missed-approach');
  });

  it('has the lowest point, and where it stood 300 ft above', () => {
    expect(ending({ heightFt: downTo(280) }).climb).toMatchObject({
      lowestS: 100,
      lowestFt: 280,
      clearS: 130,
    });
  });

  it('of less than 300 ft is none', () => {
    expect(outcome({ heightFt: downTo(280), untilS: 130 })).toBe('missed-approach');
    expect(outcome({ heightFt: downTo(280), untilS: 129 })).toBe('incomplete');
  });

  it('that starts 1,000 ft above the touchdown zone is a missed approach on the localizer only', () => {
    // The touchdown zone lies at 130 ft; left at 105 s, while climbing.
    const leaving = (s: number) => (s <= 105 ? 0 : 2);
    expect(outcome({ heightFt: downTo(1129), localizer: leaving })).toBe('missed-approach');
    expect(outcome({ heightFt: downTo(1131), localizer: leaving })).toBe('broken-off');
    expect(outcome({ heightFt: downTo(1131) })).toBe('missed-approach');
  });
});

describe('a climb after the localizer was left', () => {
  const left = (lowestS: number, awayDeg: number) =>
    ending({
      localizer: (s) => (s <= 50 ? 1 : 2),
      heightFt: (s) => 600 + 10 * Math.abs(s - lowestS),
      courseAngleDeg: (s) => (s <= 50 ? 0 : awayDeg),
    });

  it('belongs to the approach when it starts within ten seconds, and after a turn away is else a circling', () => {
    expect(left(60, 46)).toMatchObject({ outcome: 'missed-approach', leftS: 50 });
    expect(left(61, 46)).toMatchObject({ outcome: 'circled', leftS: 50 });
  });

  it('belongs to it, and the localizer was lost and not left, where the aircraft flew on inbound', () => {
    expect(left(61, 45)).toMatchObject({ outcome: 'missed-approach', leftS: null });
    expect(left(95, -45)).toMatchObject({ outcome: 'missed-approach', leftS: null });
  });
});

describe('a climb before final began', () => {
  it('is no missed approach', () => {
    const flown = makeFlown({ untilS: 200, heightFt: downTo(280) });
    const pass = findPasses(flown)[0]!;
    expect(findEnding(flown, pass, 0, DECISION_FT).outcome).toBe('missed-approach');
    expect(findEnding(flown, pass, null, DECISION_FT)).toMatchObject({ outcome: 'incomplete', climb: null });
  });
});

describe('leaving the localizer without a climb', () => {
  const left = (making: Making) => outcome({ localizer: (s) => (s < 50 ? 0 : 2), heightFt: 900, ...making });

  it('is circled below 1,000 ft above the touchdown zone, and broken off above', () => {
    // 30 ft lie between the threshold and the touchdown zone.
    expect(left({ heightFt: 1029 })).toBe('circled');
    expect(left({ heightFt: 1030 })).toBe('broken-off');
  });

  it('is a sidestep when it ends on the ground beside the runway, along the course', () => {
    const rolling: Making = {
      heightFt: (s) => Math.max(0, 900 - 10 * s),
      groundspeedKt: (s) => (s < 150 ? 80 : 30),
      offsetFt: -700,
    };
    expect(left(rolling)).toBe('sidestepped');
    expect(left({ ...rolling, courseAngleDeg: (s) => (s < 50 ? 0 : 30.1) })).toBe('circled');
    expect(left({ ...rolling, groundspeedKt: 80 })).toBe('circled');
    // Straight on to this runway is a landing, however far the needle stood off before.
    const straightOn: Making = { ...rolling, offsetFt: 75, distanceNm: (s) => (140 - s) / 60 };
    expect(left(straightOn)).toBe('landed');
    expect(left({ ...straightOn, courseAngleDeg: (s) => (s === 55 ? 46 : 0) })).toBe('circled');
    expect(left({ ...rolling, heightFt: (s) => Math.max(150, 900 - 10 * s) })).toBe('circled');
  });
});

describe('the ground', () => {
  /** Over the threshold at 100 s, level on the runway from 110 s, slow from 115 s. */
  const landing: Making = {
    distanceNm: (s) => (100 - s) / 40,
    heightFt: (s) => Math.max(20, 1050 - 10 * s),
    groundspeedKt: (s) => (s < 115 ? 90 : 30),
    facility: { farEnd: { latDeg: 0, lonDeg: 0, elevationFt: 100 } },
  };
  const upFrom = (s0: number) => (s: number) => Math.max(20, 1050 - 10 * s, 20 + 10 * (s - s0));

  it('is a landing, or a touch-and-go when a climb of 300 ft followed, never below 20 kt', () => {
    expect(outcome(landing)).toBe('landed');
    expect(outcome({ ...landing, heightFt: upFrom(120) })).toBe('touch-and-go');
    const stopped = (s: number) => (s < 115 ? 90 : s === 118 ? 19.9 : 30);
    expect(outcome({ ...landing, heightFt: upFrom(120), groundspeedKt: stopped })).toBe('landed');
  });

  it('is a landing when the climb took longer than two minutes', () => {
    const climbing = (ftPerS: number): Making => ({
      ...landing,
      untilS: 300,
      heightFt: (s) => Math.max(20, 1050 - 10 * s, 20 + ftPerS * (s - 120)),
    });
    expect(outcome(climbing(2.5))).toBe('touch-and-go');
    expect(outcome(climbing(2.45))).toBe('landed');
  });

  it('is touched however high the threshold was crossed', () => {
    const crossedAt = (feet: number) => (s: number) => (s <= 100 ? feet : 20);
    expect(outcome({ ...landing, heightFt: crossedAt(60) })).toBe('landed');
    expect(outcome({ ...landing, heightFt: crossedAt(250) })).toBe('landed');
  });
});
