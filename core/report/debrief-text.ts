import type {
  ApproachDebrief,
  Debrief,
  DebriefCriterion,
  DebriefEvent,
  DebriefNeedle,
} from '../debrief/debrief.ts';
import { dayAndClock, whole } from './plain-words.ts';
import { textLines } from './text-rows.ts';

const PAGE_WIDTH = 100;

/** Verdicts have a shape and a word. */
const VERDICTS = { met: '● met', 'not-met': '▲ not met', 'not-assessed': '○ not assessed' };
const EVENTS = { 'final-approach-fix': 'Final approach fix', 'decision-altitude': 'Decision altitude' };

/** The debrief as a page to read aloud, at most 100 columns: first one sentence, then what it stands on. */
export function debriefText(debrief: Debrief): string {
  const blocks = [
    ...(debrief.approaches.length === 0
      ? [debrief.issues.flatMap(({ message, tip }) => lines(tip ? `${message} ${tip}` : message))]
      : debrief.approaches.flatMap(approachBlocks)),
    lines(`From ${debrief.log.file} at ${debrief.facility.name}, judged by ${debrief.standard.source}.`),
    notes(debrief),
    debrief.cautions.map((caution) => `Caution: ${caution}`).flatMap(lines),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

function lines(text: string): string[] {
  return textLines(text, PAGE_WIDTH);
}

function approachBlocks(approach: ApproachDebrief): string[][] {
  return [
    lines(approach.summary),
    approach.criteria.map(criterionLine),
    approach.events.map(eventLine),
    ...approach.segments.map(({ localizer, glidepath }) =>
      [excursionLines('Localizer', localizer), excursionLines('Glidepath', glidepath)].flat(),
    ),
    lines(`${approach.notGradedBecause[0]!.toUpperCase()}${approach.notGradedBecause.slice(1)}.`),
  ];
}

function criterionLine({ title, measured, why, verdict }: DebriefCriterion): string {
  const largest = measured === null ? '' : `largest ${measured.toFixed(2)}`;
  return `${VERDICTS[verdict].padEnd(15)} ${title.padEnd(19)} ${largest.padEnd(13)} ${why}`;
}

function eventLine(event: DebriefEvent): string {
  const { clock } = dayAndClock(event.utc);
  const values = [
    `${event.distanceToThresholdNm.toFixed(1)} NM`,
    event.altitudeFt === null ? null : `${whole(event.altitudeFt)} ft ${event.altitudeSource}`,
    sided(event.localizerFullScale, 'right', 'left'),
    event.glidepathFullScale === null ? null : sided(event.glidepathFullScale, 'high', 'low'),
    event.airspeedKt === null ? null : `${whole(event.airspeedKt)} kt`,
  ].filter((value) => value !== null);
  return `${clock}  ${EVENTS[event.kind].padEnd(20)} ${values.join(', ')}`;
}

/** A deviation as it is read aloud: "right 0.62", in fractions of full scale; zero has no side. */
function sided(fullScale: number, above: string, below: string): string {
  const size = Math.abs(fullScale).toFixed(2);
  if (size === '0.00') return above === 'right' ? 'on course' : 'on path';
  return `${fullScale > 0 ? above : below} ${size}`;
}

function excursionLines(name: string, { excursions }: DebriefNeedle): string[] {
  return excursions.map(({ startUtc, endUtc, side, peakFullScale }) => {
    const from = dayAndClock(startUtc).clock;
    const to = dayAndClock(endUtc).clock;
    return `${from} to ${to}  ${name} beyond ¾ scale, ${side} ${Math.abs(peakFullScale).toFixed(2)} at most`;
  });
}

function notes({ log, facility }: Debrief): string[] {
  return [...facility.issues, ...log.issues]
    .filter(({ severity }) => severity !== 'note')
    .flatMap(({ message, tip }) => lines(`To be checked: ${message}${tip ? ` ${tip}` : ''}`));
}
