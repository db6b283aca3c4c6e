import { findLowestRun } from '../approach/lowest-run.ts';
import type { Deviations } from '../deviation/deviations.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { valueAt } from '../numeric/polyline.ts';
import type { Track } from '../track/track.ts';
import { utcText } from '../units/utc.ts';
import type { ApproachDebrief, DebriefCriterion, DebriefEvent, Unknown } from './debrief.ts';
import { decidingAltitude, finalStretch, type FinalStretch } from './final-stretch.ts';
import { needleCriterion, needleOnFinal } from './needle-on-final.ts';

/** The inbound run that ends lowest, judged by the instrument-rating needle limit; null when there is none. */
export function shortDebrief(
  track: Track,
  deviations: Deviations,
  facility: FacilityGeometry,
): ApproachDebrief | null {
  const run = findLowestRun(track, deviations, facility);
  const final = run && finalStretch(track, deviations, facility, run);
  if (!run || !final) return null;
  const localizer = needleOnFinal(track, deviations.localizerFullScale, final, {
    above: 'right',
    below: 'left',
  });
  const glidepath = needleOnFinal(track, deviations.glidepathFullScale, final, {
    above: 'high',
    below: 'low',
  });
  const flownToDecision = final.decisionS !== null;
  const criteria = [
    needleCriterion('localizer-final', 'Localizer on final', localizer, flownToDecision),
    needleCriterion('glidepath-final', 'Glidepath on final', glidepath, flownToDecision),
  ];
  return {
    index: 1,
    startUtc: utcText(track.timeS[run.first]!)!,
    endUtc: utcText(track.timeS[run.last]!)!,
    outcome: null,
    events: eventsOf(track, deviations, final),
    segments: [
      {
        kind: 'final',
        startUtc: utcText(final.startS)!,
        endUtc: utcText(final.endS)!,
        unrecordedS: localizer.unrecordedS,
        localizer: localizer.debrief,
        glidepath: glidepath.debrief,
      },
    ],
    stability: [],
    criteria,
    stated: { conditions: 'not-stated', visualReferenceAtMinimums: 'not-stated' },
    summary: summaryOf(criteria),
    grade: null,
    notGradedBecause: 'not graded: this version judges the two needles on final and nothing else',
    findings: [],
    unknown: { outcome: 'This version does not tell a landing from a missed approach.' },
  };
}

function eventsOf(track: Track, deviations: Deviations, final: FinalStretch): DebriefEvent[] {
  const events: DebriefEvent[] = [];
  if (final.fixS !== null) events.push(eventAt('final-approach-fix', final.fixS, track, deviations));
  if (final.decisionS !== null) events.push(eventAt('decision-altitude', final.decisionS, track, deviations));
  return events;
}

function eventAt(
  kind: DebriefEvent['kind'],
  momentS: number,
  track: Track,
  deviations: Deviations,
): DebriefEvent {
  const at = (values: Float64Array | undefined) => {
    const value = values ? valueAt(track.timeS, values, momentS, track.gapLimitS) : NaN;
    return Number.isNaN(value) ? null : value;
  };
  const { source, altitudeFt } = decidingAltitude(track);
  const values = {
    altitudeFt: at(altitudeFt),
    glidepathFullScale: at(deviations.glidepathFullScale),
    groundspeedKt: at(track.groundspeedKt),
    verticalSpeedFpm: at(track.verticalSpeedFpm),
    airspeedKt: at(track.recorded.airspeedIndicatedKt),
  };
  const unknown: { [K in keyof typeof values]?: string } = {};
  for (const key of Object.keys(values) as (keyof typeof values)[])
    if (values[key] === null) unknown[key] = 'Not recorded at this moment.';
  if (!track.recorded.airspeedIndicatedKt) unknown.airspeedKt = 'The log has no indicated airspeed.';
  return {
    kind,
    utc: utcText(momentS)!,
    distanceToThresholdNm: at(deviations.distanceToThresholdNm)!,
    localizerFullScale: at(deviations.localizerFullScale)!,
    altitudeSource: source,
    ...values,
    unknown: unknown satisfies Unknown<keyof typeof values>,
  };
}

function summaryOf(criteria: readonly DebriefCriterion[]): string {
  const outside = criteria.filter(({ verdict }) => verdict === 'not-met');
  const open = criteria.filter(({ verdict }) => verdict === 'not-assessed');
  if (outside.length > 0)
    return `On final the ${outside.map(({ title, why }) => `${axis(title)} was ${why}`).join(', and the ')}.`;
  if (open.length > 0) return `Neither needle was beyond ¾ scale, but ${open[0]!.why}.`;
  return 'Both needles stayed within ¾ scale from the fix to decision altitude.';
}

function axis(title: string): string {
  return title.split(' ')[0]!.toLowerCase();
}
