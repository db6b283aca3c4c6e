import type { EventKind, SegmentKind } from '../approach/flown-approach.ts';
import type {
  ApproachDebrief,
  Debrief,
  DebriefCriterion,
  DebriefEvent,
  DebriefMeasures,
  DebriefNeedle,
  DebriefSegment,
} from '../debrief/debrief.ts';
import { dayAndClock, duration } from './plain-words.ts';
import { whole } from '../units/whole.ts';
import { sided } from './sided.ts';
import { textLines } from './text-rows.ts';

const PAGE_WIDTH = 100;

/** Verdicts have a shape and a word. */
const VERDICTS = { met: '● met', 'not-met': '▲ not met', 'not-assessed': '○ not assessed' };
const KINDS = { approach: 'Approach', 'visual-final': 'Visual final', 'localizer-pass': 'Pass' };
const EVENTS: Readonly<Record<EventKind, string>> = {
  'localizer-alive': 'Localizer alive',
  'localizer-established': 'Established',
  'localizer-lost': 'Localizer lost',
  'localizer-re-established': 'Established again',
  'glidepath-alive': 'Glidepath alive',
  'glidepath-intercept': 'Glidepath intercepted',
  'final-approach-fix': 'Final approach fix',
  'gate-1000': '1,000 ft gate',
  'gate-500': '500 ft gate',
  'decision-altitude': 'Decision altitude',
  'missed-approach-start': 'Missed approach begun',
  'lowest-point': 'Lowest point',
  threshold: 'Threshold',
  'abeam-threshold': 'Abeam the threshold',
  touchdown: 'Touchdown',
};
const SEGMENTS: Readonly<Record<SegmentKind, string>> = {
  intercept: 'Before final',
  final: 'Final',
  visual: 'Visual',
  missed: 'Missed approach',
};

/** The debrief as a page to read aloud, at most 100 columns: first one sentence, then what it stands on. */
export function debriefText(debrief: Debrief): string {
  const several = debrief.approaches.length > 1;
  const blocks = [
    ...debrief.approaches.flatMap((approach) => approachBlocks(approach, debrief, several)),
    debrief.issues.flatMap(({ message, tip }) => lines(tip ? `${message} ${tip}` : message)),
    lines(sourceSentence(debrief)),
    toCheck(debrief),
    debrief.cautions.flatMap((caution) => lines(`Caution: ${caution}`)),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** Where no approach was flown nothing was judged either. */
function sourceSentence({ log, facility, standard, approaches }: Debrief): string {
  const judged = approaches.some(({ criteria }) => criteria.length > 0)
    ? `, judged by ${standard.source}`
    : '';
  return `From ${log.file} at ${facility.name}${judged}.`;
}

function lines(text: string): string[] {
  return textLines(text, PAGE_WIDTH);
}

function approachBlocks(approach: ApproachDebrief, { log }: Debrief, several: boolean): string[][] {
  const { index, kind, startUtc, summary, criteria, events, segments, measures } = approach;
  const { day, clock } = dayAndClock(startUtc);
  const moment =
    log.timeReference === 'elapsed' ? `${clock} into the log` : `${day}, ${clock} ${zoneOf(log)}`;
  const heading = `${KINDS[kind]} ${index}, ${moment}`;
  return [
    ...(several ? [[heading, '-'.repeat(heading.length)]] : []),
    lines(summary),
    criteria.flatMap(criterionLines),
    [
      `What happened (${zoneOf(log)}; ${altitudeWords(events)})`,
      ...events.map((event) => `  ${eventLine(event)}`),
    ],
    segments.flatMap(segmentLines),
    measureLines(measures),
    lines(`${approach.notGradedBecause[0]!.toUpperCase()}${approach.notGradedBecause.slice(1)}.`),
  ];
}

function zoneOf({ timeReference }: Debrief['log']): string {
  return { utc: 'UTC', local: 'times as written', elapsed: 'from the start of the log' }[timeReference];
}

/** Which altitude the moments are told by: a pilot flies by the altimeter, so the other kind is named for what it is. */
function altitudeWords([event]: readonly DebriefEvent[]): string {
  return event?.altitudeSource === 'indicated'
    ? 'indicated altitudes'
    : 'heights from the log, your altimeter decides';
}

function criterionLines({ title, measured, why, verdict }: DebriefCriterion): string[] {
  const largest = measured === null ? '' : `largest ${measured.toFixed(2)}`;
  const line = `${VERDICTS[verdict].padEnd(15)} ${title.padEnd(19)} ${largest.padEnd(13)}`;
  const together = `${line} ${why}`;
  return together.length <= PAGE_WIDTH ? [together] : [line.trimEnd(), `${' '.repeat(16)}${why}`];
}

function eventLine(event: DebriefEvent): string {
  const { clock } = dayAndClock(event.utc);
  const name = EVENTS[event.kind] + (event.remark ? `, ${event.remark.replace('-', ' ')}` : '');
  const { distanceToThresholdNm, altitudeFt, localizerFullScale, glidepathFullScale } = event;
  const values = [
    distanceToThresholdNm === null ? '' : `${tenths(distanceToThresholdNm)} NM`,
    altitudeFt === null ? '' : `${whole(altitudeFt)} ft`,
    sided(localizerFullScale, 'localizer'),
    sided(glidepathFullScale, 'glidepath'),
    event.airspeedKt === null ? '' : `${whole(event.airspeedKt)} kt`,
  ];
  const widths = [8, 9, 12, 11, 6];
  const cells = values.map((value, i) => (i < 2 ? value.padStart(widths[i]!) : value.padEnd(widths[i]!)));
  return `${clock}  ${name.padEnd(33)}${cells.join('  ')}`.trimEnd();
}

/** To one decimal, with a true minus sign and none before a zero. */
function tenths(value: number): string {
  return value.toFixed(1).replace('-', value > -0.05 ? '' : '−');
}

function segmentLines(segment: DebriefSegment): string[] {
  const { kind, durationS, unrecordedS, localizer, glidepath } = segment;
  const unrecorded = unrecordedS >= 1 ? `, ${duration(unrecordedS)} of it not recorded` : '';
  return [
    `${SEGMENTS[kind]}: ${duration(durationS)}${unrecorded}`,
    ...(localizer ? needleLines('Localizer', localizer) : []),
    ...(glidepath ? needleLines('Glidepath', glidepath) : []),
    ...spreadLine('Airspeed', segment.airspeed, 'kt'),
    ...spreadLine('Vertical speed', segment.verticalSpeed, 'ft/min'),
    ...spreadLine('Right of centreline', segment.centrelineOffsetFt, 'ft'),
    ...spreadLine('Above the glidepath', segment.heightAboveGlidepathFt, 'ft'),
  ];
}

function needleLines(name: string, needle: DebriefNeedle): string[] {
  const { rmsFullScale, maxAbsFullScale, insideShare, reversalsPerMinute, excursions } = needle;
  if (rmsFullScale === null || insideShare === null) return [`  ${name.padEnd(20)} not recorded`];
  const share = (part: number) => `${Math.round(part * 100)} %`;
  return [
    `  ${name.padEnd(20)} RMS ${rmsFullScale.toFixed(2)}, largest ${maxAbsFullScale!.toFixed(2)}; within ¼ ` +
      `${share(insideShare.quarter)}, ½ ${share(insideShare.half)}, ¾ ${share(insideShare.threeQuarters)}; ` +
      (reversalsPerMinute === null ? 'turns not told' : `${reversalsPerMinute.toFixed(1)} turns a minute`),
    ...excursions.map(({ startUtc, endUtc, side, peakFullScale }) => {
      const [from, to] = [dayAndClock(startUtc).clock, dayAndClock(endUtc).clock];
      return `    ${from} to ${to}: beyond ¾ scale, ${side} ${Math.abs(peakFullScale).toFixed(2)} at most`;
    }),
  ];
}

function spreadLine(name: string, spread: DebriefSegment['airspeed'], unit: string): string[] {
  if (!spread) return [];
  const { mean, lowest, highest } = spread;
  return [`  ${name.padEnd(20)} mean ${whole(mean)} ${unit}, ${whole(lowest)} to ${whole(highest)}`];
}

function measureLines(measures: DebriefMeasures): string[] {
  const { correctionsOnFinal, sinkOnFinal, windOnFinal, threshold } = measures;
  const found: string[] = [];
  if (sinkOnFinal)
    found.push(
      `Sink rate on final ${whole(sinkOnFinal.heldFpm)} ft/min; the path needed ${whole(sinkOnFinal.neededFpm)}.`,
    );
  if (correctionsOnFinal && correctionsOnFinal.count > 0)
    found.push(
      `${changes(correctionsOnFinal.count)} of track on final of 2° or more, ` +
        `${whole(correctionsOnFinal.meanDeg!)}° on average and ${whole(correctionsOnFinal.largestDeg!)}° at most.`,
    );
  if (windOnFinal) found.push(windSentence(windOnFinal));
  if (threshold) found.push(thresholdSentence(threshold));
  if (measures.touchdownDistanceFt !== null)
    found.push(`Touched down ${whole(measures.touchdownDistanceFt)} ft past the threshold.`);
  if (measures.heightLostInMissedApproachFt !== null)
    found.push(
      `Lost ${whole(measures.heightLostInMissedApproachFt)} ft after the missed approach was begun.`,
    );
  return found.flatMap(lines);
}

function changes(count: number): string {
  return count === 1 ? '1 change' : `${count} changes`;
}

function windSentence(wind: NonNullable<DebriefMeasures['windOnFinal']>): string {
  const { fromTrueDeg, speedKt, headwindKt, crosswindFromRightKt } = wind;
  const along = `${whole(Math.abs(headwindKt))} kt ${headwindKt < 0 ? 'tailwind' : 'headwind'}`;
  const across = `${whole(Math.abs(crosswindFromRightKt))} kt from the ${crosswindFromRightKt < 0 ? 'left' : 'right'}`;
  const from = String(Math.round(fromTrueDeg) % 360).padStart(3, '0');
  return `Wind on final from ${from}° true at ${whole(speedKt)} kt: ${along}, ${across}.`;
}

function thresholdSentence({ heightFt, offsetFt }: NonNullable<DebriefMeasures['threshold']>): string {
  const feet = whole(Math.abs(offsetFt));
  const where = feet === '0' ? 'on' : `${feet} ft ${offsetFt < 0 ? 'left' : 'right'} of`;
  return `Crossed the threshold at ${whole(heightFt)} ft, ${where} the centreline.`;
}

function toCheck({ log, facility }: Debrief): string[] {
  return [...facility.issues, ...log.issues]
    .filter(({ severity }) => severity !== 'note')
    .flatMap(({ message, tip }) => lines(`To be checked: ${message}${tip ? ` ${tip}` : ''}`));
}
