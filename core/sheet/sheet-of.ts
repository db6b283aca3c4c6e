import type { Composed } from '../debrief/compose-debrief.ts';
import { needlesUntilS } from '../approach/flown-approach.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { firstAfter, type Span } from '../numeric/polyline.ts';
import { approachHeading, zoneOf } from '../report/debrief-text.ts';
import { eventWords } from '../report/event-lines.ts';
import type { Case } from '../standard/case.ts';
import { gateDatumFt } from '../standard/gate-datum.ts';
import { beamOf } from './beam-lines.ts';
import type { Sheet, SheetHeights } from './sheet.ts';
import { sheetBands, sheetExcursions } from './sheet-bands.ts';
import { sheetColumns } from './sheet-columns.ts';

/** The sheet of each approach of a debrief, in its order. */
export function sheetsOf({ debrief, sittings }: Composed): Sheet[] {
  return debrief.approaches.map((approach, i) => {
    const sitting = sittings[i]!;
    const { flown, stated } = sitting;
    const { startS, endS } = sitting.approach;
    const columns = sheetColumns(flown, stated, approach.measures, { startS, endS });
    return {
      index: approach.index,
      title: approachHeading(approach, debrief.log),
      facilityName: debrief.facility.name,
      span: { startS, endS },
      columns,
      segments: sitting.approach.segments,
      // Their own times: those of the debrief are told to the millisecond.
      events: sitting.approach.events.map(({ kind, timeS }, k) => {
        const told = approach.events[k]!;
        return { kind, words: eventWords(told), timeS, told };
      }),
      needlesUntilS: needlesUntilS(sitting.approach),
      excursions: sheetExcursions(sitting, approach),
      isCounted: approach.criteria.some(({ counted }) => counted.length > 0),
      bands: sheetBands(sitting, approach),
      beam: beamOf(flown.facility, farthestOf(columns.distanceNm)),
      heights: heightsOf(sitting),
      fixes: fixesOf(flown.facility),
      zone: zoneOf(debrief.log),
    };
  });
}

function heightsOf({ flown, standard, approach }: Case): SheetHeights {
  const { facility, altitudeSource } = flown;
  const datumFt = gateDatumFt(standard, facility);
  const decision = approach.events.find(({ kind }) => kind === 'decision-altitude');
  return {
    thresholdFt: facility.threshold.elevationFt,
    gate1000Ft: datumFt + 1000,
    gate500Ft: datumFt + 500,
    decisionFt: facility.decisionAltitudeFt ?? decision?.heightCrossedFt ?? null,
    isDecisionAssumed: facility.decisionAltitudeFt === null,
    source: flown.track.altitudeSource,
    judgedBy: altitudeSource,
    halfWidthFt: medianHeightError(flown, approach),
  };
}

/** At the middle of the span; over one approach it hardly changes. */
function medianHeightError({ track, error }: Case['flown'], { startS, endS }: Span): number {
  return error.heightFt(Math.min(firstAfter(track.timeS, (startS + endS) / 2), track.count - 1));
}

function fixesOf({ finalApproachFix, origins }: FacilityGeometry): Sheet['fixes'] {
  // An assumed one is nothing that a chart shows.
  if (origins.finalApproachFix === 'assumed') return [];
  return [{ name: finalApproachFix.name ?? 'Final approach fix', distanceNm: finalApproachFix.distanceNm }];
}

function farthestOf(distanceNm: Float64Array): number {
  return distanceNm.reduce((farthest, nm) => Math.max(farthest, nm), 0);
}
