import type { EventKind } from '../approach/flown-approach.ts';
import type { DebriefEvent } from '../debrief/debrief.ts';
import { whole } from '../units/whole.ts';
import { dayAndClock } from './plain-words.ts';
import { sided } from './sided.ts';

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
  'missed-approach-start': 'Missed approach, sink halved',
  'lowest-point': 'Lowest point',
  threshold: 'Threshold',
  'abeam-threshold': 'Abeam the threshold',
  touchdown: 'Touchdown',
};

/** What a moment is called: "Glidepath intercepted, from above". */
export function eventWords({ kind, remark }: Pick<DebriefEvent, 'kind' | 'remark'>): string {
  return EVENTS[kind] + (remark ? `, ${remark.replace('-', ' ')}` : '');
}

/** One moment of an approach on one line: when, what, where, and how the needles stood. */
export function eventLine(event: DebriefEvent): string {
  const { clock } = dayAndClock(event.utc);
  const name = eventWords(event);
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

/** To one place, with a true minus sign and none before a zero. */
export function tenths(value: number): string {
  return value.toFixed(1).replace('-', value > -0.05 ? '' : '−');
}
