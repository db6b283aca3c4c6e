import type { SegmentKind } from '../approach/flown-approach.ts';
import type {
  DebriefExcursion,
  DebriefNeedle,
  DebriefSegment,
  DebriefSpeed,
  DebriefSpread,
} from '../debrief/debrief.ts';
import { whole } from '../units/whole.ts';
import { dayAndClock, duration } from './plain-words.ts';
import { whoFlew, type InstructorFlew } from './who-flew.ts';

/** What each stretch of an approach is called. */
export const SEGMENT_WORDS: Readonly<Record<SegmentKind, string>> = {
  intercept: 'Before final',
  final: 'Final',
  visual: 'Visual',
  missed: 'Missed approach',
};

/** How each value stood over one segment. */
export function segmentLines(segment: DebriefSegment, instructorFlew: InstructorFlew): string[] {
  const { kind, durationS, unrecordedS, localizer, glidepath } = segment;
  const needle = (name: string, one: DebriefNeedle | null) =>
    one === null
      ? []
      : [...needleLines(name, one, segment, instructorFlew), ...(kind === 'final' ? shownLine(one) : [])];
  const unrecorded = unrecordedS >= 1 ? `, ${duration(unrecordedS)} of it not recorded` : '';
  return [
    `${SEGMENT_WORDS[kind]}: ${duration(durationS)}${unrecorded}`,
    ...needle('Localizer', localizer),
    ...needle('Glidepath', glidepath),
    ...airspeedLines(segment.airspeed),
    ...spreadLine('Vertical speed', segment.verticalSpeed, 'ft/min'),
    ...sidesLine('Centreline', segment.centrelineOffsetFt, ['right', 'left', 'on it']),
    ...sidesLine('Glidepath', segment.heightAboveGlidepathFt, ['high', 'low', 'on it']),
  ];
}

function needleLines(
  name: string,
  needle: DebriefNeedle,
  segment: DebriefSegment,
  instructorFlew: InstructorFlew,
): string[] {
  const { rmsFullScale, maxAbsFullScale, insideShare, reversalsPerMinute, excursions } = needle;
  if (rmsFullScale === null || insideShare === null) return [`  ${name.padEnd(20)} not recorded`];
  const share = (part: number) => `${Math.round(part * 100)} %`;
  return [
    `  ${name.padEnd(20)} RMS ${rmsFullScale.toFixed(2)}, largest ${maxAbsFullScale!.toFixed(2)}; within ¼ ` +
      `${share(insideShare.quarter)}, ½ ${share(insideShare.half)}, ¾ ${share(insideShare.threeQuarters)}; ` +
      (reversalsPerMinute === null ? 'reversals not told' : `${reversalsPerMinute.toFixed(1)} reversals/min`),
    ...excursions.map((excursion) => {
      const { startUtc, endUtc, side, peakFullScale } = excursion;
      const flew = whoFlew(instructorFlew, startUtc, endUtc);
      const [from, to] = [dayAndClock(startUtc).clock, dayAndClock(endUtc).clock];
      return `    ${from} to ${to}: beyond the limit, ${side} ${Math.abs(peakFullScale).toFixed(2)} at most${judgedWords(excursion, segment, flew)}`;
    }),
  ];
}

function shownLine(needle: DebriefNeedle): string[] {
  const shown = shownSeconds(needle);
  if (shown === null) return [];
  return [
    `    on all of it, with the beam's own error, the needle may have shown ${shown} s beyond the limit`,
  ];
}

/** What the needle in the cockpit showed, "3 to 9", where the beam's own error makes that another range of seconds. */
export function shownSeconds({ shownOutsideS, timeOutsideS }: DebriefNeedle): string | null {
  if (shownOutsideS === null || timeOutsideS === null) return null;
  const [from, to] = [shownOutsideS.atLeast, shownOutsideS.atMost].map(Math.round) as [number, number];
  const isSame = from === Math.round(timeOutsideS.atLeast) && to === Math.round(timeOutsideS.atMost);
  return isSame || from === to ? null : `${from} to ${to}`;
}

function airspeedLines(speed: DebriefSpeed | null): string[] {
  const lines = spreadLine('Airspeed', speed, 'kt');
  if (!speed?.estimated) return lines;
  return [...lines, `    within ${speed.errorKt} kt: estimated from groundspeed and the stated wind`];
}

function spreadLine(name: string, spread: DebriefSpread | null, unit: string): string[] {
  if (!spread) return [];
  const { mean, lowest, highest } = spread;
  return [`  ${name.padEnd(20)} mean ${whole(mean)} ${unit}, ${whole(lowest)} to ${whole(highest)}`];
}

/** Feet to either side, as they are read aloud: "mean 2 ft left, 81 ft left to 24 ft right". */
function sidesLine(name: string, spread: DebriefSpread | null, words: SideWords): string[] {
  if (!spread) return [];
  const said = (ft: number) => feetToSide(ft, words);
  const { mean, lowest, highest } = spread;
  return [`  ${name.padEnd(20)} mean ${said(mean)}, ${said(lowest)} to ${said(highest)}`];
}

export type SideWords = readonly [positive: string, negative: string, none: string];

/** Feet with their side: "81 ft left". */
export function feetToSide(ft: number, [positive, negative, none]: SideWords): string {
  return Math.round(ft) === 0 ? none : `${whole(Math.abs(ft))} ft ${ft > 0 ? positive : negative}`;
}

/** An excursion that no criterion counted is told and not judged: the instructor's, that of leaving, or an early one. */
function judgedWords(
  { prompt, endUtc }: DebriefExcursion,
  segment: Pick<DebriefSegment, 'kind' | 'endUtc'>,
  flew: string,
): string {
  if (flew !== '') return flew;
  if (prompt !== null) return prompt ? ', promptly corrected' : '';
  return segment.kind === 'final' && endUtc === segment.endUtc ? ', in leaving it' : ', before it counted';
}
