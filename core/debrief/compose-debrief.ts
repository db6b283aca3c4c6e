import { altimeterDoubts } from '../approach/altimeter-doubt.ts';
import { flownAt, USUAL_ANTENNA_FT } from '../approach/flown.ts';
import { heightUnitDoubt } from '../approach/height-unit-doubt.ts';
import type { Deviations } from '../deviation/deviations.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { draftWarnings } from '../facility/drafted-from.ts';
import type { Facility } from '../facility/facility-schema.ts';
import { magneticVariation } from '../facility/variation.ts';
import type { Issue } from '../issue/issue.ts';
import type { Log } from '../log/log.ts';
import type { Case } from '../standard/case.ts';
import { gateDatumFt } from '../standard/gate-datum.ts';
import { DEFAULT_STANDARD } from '../standard/standards.ts';
import type { Standard } from '../standard/standard.ts';
import { NOTHING_STATED, type Stated } from '../standard/stated.ts';
import { flightYear } from '../track/flight-year.ts';
import type { PositionError } from '../track/position-error.ts';
import type { Track } from '../track/track.ts';
import { utcText } from '../units/utc.ts';
import { approachDebrief } from './approach-debrief.ts';
import { CAUTIONS } from './cautions.ts';
import type { Debrief } from './debrief.ts';
import { ENGINE_VERSION } from './engine-version.ts';
import { withHeights, type Heights } from './heights.ts';
import { positionErrorDebrief } from './position-error-debrief.ts';

/** Everything that one debrief is made of. */
export interface Material {
  readonly log: Log;
  readonly track: Track;
  readonly facility: Facility;
  readonly geometry: FacilityGeometry;
  readonly facilityIssues: readonly Issue[];
  readonly deviations: Deviations;
  readonly error: PositionError;
}

/** What approaches are held to, and what the people on board say of them. */
export interface Judging {
  readonly standard: Standard;
  readonly stated: Stated;
  /** `from-rollout`: what a roll shows the heights to be high by is taken off them. Not said: a phone's only. */
  readonly heights?: Heights;
  /** Of the receiver's antenna above the ground; the usual one's when not said. */
  readonly antennaHeightFt?: number;
}

const BY_DEFAULT: Judging = { standard: DEFAULT_STANDARD, stated: NOTHING_STATED };

/** A debrief, and what each of its approaches was judged from: what a sheet is drawn of. */
export interface Composed {
  readonly debrief: Debrief;
  readonly sittings: readonly Case[];
}

/** The debrief of one log at one facility. A log with no approach is an answer too: `approaches` is empty. */
export function composeDebrief(material: Material, judging: Judging = BY_DEFAULT): Debrief {
  return compose(material, judging).debrief;
}

/** The same, with what it was judged from. */
export function compose(material: Material, judging: Judging = BY_DEFAULT): Composed {
  const { standard, stated, heights = null, antennaHeightFt = USUAL_ANTENNA_FT } = judging;
  const { log, track, facility, geometry, deviations, error } = material;
  const datumFt = gateDatumFt(standard, geometry);
  const asLogged = flownAt(track, deviations, geometry, { error, antennaHeightFt });
  const asAsked = withHeights(asLogged, datumFt, heights);
  const unitDoubt = heightUnitDoubt(log, asAsked.flown, asAsked.found.approaches);
  // A roll says nothing of heights in another unit.
  const { flown, found, issues } = unitDoubt ? withHeights(asLogged, datumFt, 'as-logged') : asAsked;
  const { approaches, notes } = found;
  // The facility's own first: the magnetic model takes longer to load than an approach to judge.
  const variationDeg =
    facility.magneticVariationDeg ?? magneticVariation(facility, geometry, flightYear(log, track)).usedDeg;
  const draft = draftWarnings(facility);
  const sittings = approaches.map((approach) => ({ flown, approach, standard, stated }));
  const debrief: Debrief = {
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
      timeReference: log.timeReference,
      medianIntervalS: track.medianIntervalS,
      altitudeReference: track.altitudeSource,
      heightCorrectionFt: flown.heightCorrectionFt,
      positionError: positionErrorDebrief(flown, approaches[0] ?? null),
      antennaHeightFt: flown.antennaHeightFt,
      issues: [
        ...(unitDoubt ? [unitDoubt.issue] : []),
        ...log.issues,
        ...track.issues,
        ...issues,
        // A roll says nothing of these either.
        ...(unitDoubt ? [] : altimeterDoubts(flown, approaches)),
      ],
    },
    facility: facilityDebrief(material),
    standard: {
      id: standard.id,
      title: standard.title,
      source: standard.source,
      tasks: standard.tasks,
    },
    approaches: sittings.map((sitting, i) =>
      approachDebrief(sitting, { variationDeg, draft, unitDoubt, index: i + 1 }),
    ),
    issues: notes,
  };
  return { debrief, sittings };
}

/** A facility as it was held to: what its user gave and what follows from that. */
function facilityDebrief({ facility, geometry, facilityIssues }: Material): Debrief['facility'] {
  return {
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
    issues: facilityIssues,
  };
}
