import type { Deviations } from '../deviation/deviations.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import type { Facility } from '../facility/facility-schema.ts';
import { issue, type Issue } from '../issue/issue.ts';
import type { Log } from '../log/log.ts';
import { INSTRUMENT_RATING } from '../standard/instrument-rating.ts';
import type { Track } from '../track/track.ts';
import { utcText } from '../units/utc.ts';
import { CAUTIONS } from './cautions.ts';
import type { Debrief } from './debrief.ts';
import { ENGINE_VERSION } from './engine-version.ts';
import { shortDebrief } from './short-debrief.ts';

/** Everything that one debrief is made of. */
export interface Material {
  readonly log: Log;
  readonly track: Track;
  readonly facility: Facility;
  readonly geometry: FacilityGeometry;
  readonly facilityIssues: readonly Issue[];
  readonly deviations: Deviations;
}

/** The debrief of one log at one facility. A log with no approach is an answer too: `approaches` is empty. */
export function composeDebrief(material: Material): Debrief {
  const { log, track, facility, geometry, deviations } = material;
  const approach = shortDebrief(track, deviations, geometry);
  return {
    format: 'halfdot-debrief/1',
    engineVersion: ENGINE_VERSION,
    cautions: CAUTIONS,
    log: {
      file: log.name,
      sha256: log.sha256,
      kind: log.kind,
      fixes: track.count,
      startUtc: utcText(track.timeS[0]!)!,
      endUtc: utcText(track.timeS[track.count - 1]!)!,
      medianIntervalS: track.medianIntervalS,
      altitudeReference: track.altitudeSource,
      issues: [...log.issues, ...track.issues],
    },
    facility: {
      name: facility.name,
      ident: facility.ident ?? null,
      derived: {
        trueBearingDeg: geometry.trueBearingDeg,
        courseTrueDeg: geometry.courseTrueDeg,
        lengthFt: geometry.lengthFt,
        localizerAntenna: geometry.localizerAntenna,
        localizerFullScaleDeg: geometry.localizerFullScaleDeg,
        glidepathOrigin: geometry.glidepathOrigin,
        glidepathFullScaleDeg: geometry.glidepathFullScaleDeg,
      },
      issues: material.facilityIssues,
    },
    standard: {
      id: INSTRUMENT_RATING.id,
      title: INSTRUMENT_RATING.title,
      source: INSTRUMENT_RATING.source,
    },
    approaches: approach ? [approach] : [],
    issues: approach ? [] : [noApproach(deviations)],
  };
}

/** What came closest, for a log in which nothing was found. */
function noApproach(deviations: Deviations): Issue {
  let nearestNm = Infinity;
  for (const distanceNm of deviations.distanceToAntennaNm) nearestNm = Math.min(nearestNm, distanceNm);
  return issue(
    'note',
    'no-approach',
    `No approach: no stretch flown inbound on this localizer reached the fix. The log comes within ${nearestNm.toFixed(1)} NM of the localizer antenna.`,
    { tip: 'Is it the right facility for this flight?' },
  );
}
