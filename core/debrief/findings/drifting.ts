import { momentOf } from '../../approach/flown-approach.ts';
import type { Wind } from '../../approach/wind.ts';
import { spreadOf } from '../../approach/spread.ts';
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from '../../units/units.ts';
import { over, type Asked } from './asked.ts';
import { localizerSpells, type Spell } from './localizer-spells.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { scaleFraction, seconds, sideWords } from './say.ts';
import { whole } from '../../units/whole.ts';

const THRESHOLDS = {
  crosswind: threshold(
    5,
    'kt across, and more than its error',
    'less asks for a correction of 3 degrees, as large as a heading is read to',
  ),
  from: threshold(0.25, 'of full scale', 'where a correction is due (design, section 8)'),
  share: threshold(0.5, 'of the drift that the wind makes', 'less than half of the wind correction was held'),
  lasts: threshold(8, 's', 'shorter is a gust (ours)'),
};

/** Let the wind carry it off the course. */
export const DRIFTING: FindingRule = {
  id: 'drifting',
  kind: 'fault',
  title: 'Drifted with the wind',
  thresholds: THRESHOLDS,
  stoodOff: 'localizer',
  byHand: true,
  coveredBy: ['late-on-localizer'],
  find,
  text: ({ crosswindKt, driftDeg, wholeDriftDeg, peakFullScale, lastsS }) =>
    `With ${whole(Math.abs(crosswindKt!))} kt of crosswind from the ${crosswindKt! > 0 ? 'right' : 'left'} you let yourself drift ${whole(driftDeg!)} degrees off course ` +
    `for ${seconds(lastsS!)}, to ${scaleFraction(peakFullScale!)} ${sideWords(peakFullScale!, 'localizer')}. That wind needs about ${whole(wholeDriftDeg!)} degrees of correction.`,
  practise:
    'Work out the wind correction before the intercept, roll out on that heading and not on the course, and bracket: half of your ' +
    'last change each time the needle stops.',
};

function find(asked: Asked): Found | null {
  const wind = windOf(asked);
  if (wind === null || Math.abs(wind.crosswindKt) < Math.max(THRESHOLDS.crosswind.value, wind.errorKt))
    return null;
  const downwind = wind.crosswindKt > 0 ? -1 : 1;
  for (const spell of localizerSpells(asked, THRESHOLDS.from.value)) {
    const found = spell.side === downwind && !spell.fromStart ? driftIn(asked, spell, wind) : null;
    if (found !== null) return found;
  }
  return null;
}

interface Crosswind {
  readonly crosswindKt: number;
  readonly errorKt: number;
}

/** The wind across the course, from the right positive: as flown through, else as stated. */
function windOf({ measures, sitting }: Asked): Crosswind | null {
  if (measures.wind !== null)
    return { crosswindKt: measures.wind.crosswindFromRightKt, errorKt: measures.wind.errorKt };
  const { wind } = sitting.stated;
  if (wind === null) return null;
  const off = (wind.fromTrueDeg - sitting.flown.facility.courseTrueDeg) * RADIANS_PER_DEGREE;
  return { crosswindKt: wind.speedKt * Math.sin(off), errorKt: STATED_ERROR_KT };
}

/** Of a wind reported at the ground, aloft. Ours. */
const STATED_ERROR_KT: Wind['errorKt'] = 5;

/** From the middle out to the farthest: how far the track pointed with the wind. */
function driftIn(asked: Asked, spell: Spell, { crosswindKt, errorKt }: Crosswind): Found | null {
  const { track, courseAngleDeg } = asked.sitting.flown;
  const span = {
    startS: Math.max(spell.startS - 10, momentOf(asked.sitting.approach, 'localizer-alive') ?? 0),
    endS: spell.peakS,
  };
  const angle = spreadOf(over(asked, courseAngleDeg, span));
  const speed = spreadOf(over(asked, track.groundspeedKt, span));
  if (angle === null || speed === null || span.endS - spell.startS < THRESHOLDS.lasts.value) return null;
  const madeBy = (kt: number) => Math.asin(Math.min(1, kt / speed.mean)) * DEGREES_PER_RADIAN;
  const wholeDriftDeg = madeBy(Math.abs(crosswindKt));
  const driftDeg = spell.side * angle.mean;
  // More than the wind makes with all of its error was steered.
  if (driftDeg > madeBy(Math.abs(crosswindKt) + errorKt)) return null;
  if (driftDeg < THRESHOLDS.share.value * wholeDriftDeg) return null;
  const lastsS = span.endS - span.startS;
  return {
    startS: span.startS,
    endS: spell.endS,
    evidence: { crosswindKt, driftDeg, wholeDriftDeg, peakFullScale: spell.peakFullScale, lastsS },
  };
}
