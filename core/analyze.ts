import { composeDebrief, type Judging, type Material } from './debrief/compose-debrief.ts';
import type { Debrief } from './debrief/debrief.ts';
import { projectTrack } from './deviation/project-track.ts';
import type { Place } from './earth/frame.ts';
import { loadGeoid } from './earth/geoid.ts';
import { checkFacility } from './facility/contradictions.ts';
import { deriveGeometry, type FacilityGeometry } from './facility/derive-geometry.ts';
import { isDraftedFrom } from './facility/drafted-from.ts';
import type { Facility } from './facility/facility-schema.ts';
import { parseFacility } from './facility/parse-facility.ts';
import { refused, usable, type Outcome } from './issue/issue.ts';
import type { Job, Log, LogSettings, LogSource } from './log/log.ts';
import { readLog } from './log/read-log.ts';
import { buildTrack } from './track/build-track.ts';
import { flightYear } from './track/flight-year.ts';
import { positionErrorOf } from './track/position-error.ts';
import type { Track } from './track/track.ts';

/** A facility as its user defined it, and what follows from it. */
export interface DefinedFacility {
  readonly facility: Facility;
  readonly geometry: FacilityGeometry;
}

/** A log, read, and its track. */
export interface Flight {
  readonly log: Log;
  readonly track: Track;
}

/** Reads a facility file and derives its geometry. */
export function defineFacility(text: string, fileName: string): Outcome<DefinedFacility> {
  const parsed = parseFacility(text, fileName);
  if (!parsed.ok) return parsed;
  return usable({ facility: parsed.value, geometry: deriveGeometry(parsed.value) }, parsed.issues);
}

/** Reads a log and makes its track; `threshold` tells where the geoid is taken when the log needs it. */
export async function readFlight(
  source: LogSource,
  threshold: Place | null,
  settings: LogSettings,
  job: Job,
): Promise<Outcome<Flight>> {
  const log = await readLog(source, settings, job);
  if (!log.ok) return log;
  const { altimeterSettingHpa = null, temperatureC, receiver = null } = settings;
  const aerodrome =
    threshold === null || temperatureC === undefined
      ? null
      : { elevationFt: threshold.elevationFt, temperatureC };
  const undulationM = await undulationFor(log.value, threshold);
  const track = buildTrack(log.value, { undulationM, altimeterSettingHpa, aerodrome, receiver });
  if (!track.ok) return { ...track, issues: [...log.issues, ...track.issues] };
  return usable({ log: log.value, track: track.value }, [...log.issues, ...track.issues]);
}

/** The way of the whole program: log, track, facility, deviation, and what a debrief is made of. */
export async function analyze(
  source: LogSource,
  defined: DefinedFacility,
  settings: LogSettings,
  job: Job,
): Promise<Outcome<Material>> {
  const flight = await readFlight(source, defined.geometry.threshold, settings, job);
  if (!flight.ok) return flight;
  if (isDraftedFrom(defined.facility, flight.value.log)) return ownDraft(flight.value, defined);
  const material = materialOf(flight.value, defined);
  return usable(material, [...flight.issues, ...material.facilityIssues]);
}

/** Design, section 6: a facility never grades the log that it was drafted from. */
function ownDraft({ log }: Flight, { facility }: DefinedFacility): Outcome<never> {
  return refused(
    'facility-drafted-from-this-log',
    `${facility.name} was drafted from a landing in this log (${log.name}): it would be held to itself.`,
    { tip: 'Debrief another flight by it, or enter the facility from its chart.' },
  );
}

/**
 * What a debrief of a flight at a facility is made of. The flight has to be read for that facility where its heights
 * depend on one (`dependsOnFacility`).
 */
function materialOf({ log, track }: Flight, { facility, geometry }: DefinedFacility): Material {
  const facilityIssues = checkFacility(facility, geometry, flightYear(log, track));
  const deviations = projectTrack(track, geometry);
  const error = positionErrorOf(track, geometry.threshold.elevationFt);
  return { log, track, facility, geometry, facilityIssues, deviations, error };
}

/** The same, with the flight read again where that facility makes another of it. `source` opens the log anew. */
export async function materialThere(
  flight: Flight,
  source: () => LogSource,
  defined: DefinedFacility,
  settings: LogSettings,
  job: Job,
): Promise<Outcome<Material>> {
  if (isDraftedFrom(defined.facility, flight.log)) return ownDraft(flight, defined);
  if (dependsOnFacility(flight, settings)) return analyze(source(), defined, settings, job);
  const material = materialOf(flight, defined);
  return usable(material, material.facilityIssues);
}

/** Whether a track is another at another facility: heights less the geoid there, or corrected for the air there. */
function dependsOnFacility({ track }: Flight, settings: LogSettings): boolean {
  return track.altitudeSource === 'ellipsoid-less-geoid' || settings.temperatureC !== undefined;
}

/** The same, to its end; by the default standard and with nothing stated unless `judging` says otherwise. */
export async function debriefLog(
  source: LogSource,
  defined: DefinedFacility,
  settings: LogSettings,
  job: Job,
  judging?: Judging,
): Promise<Outcome<Debrief>> {
  const material = await analyze(source, defined, settings, job);
  return material.ok ? usable(composeDebrief(material.value, judging), material.issues) : material;
}

/** The geoid costs a tenth of a second to load, so only a log of ellipsoid heights pays for it. */
async function undulationFor(log: Log, threshold: Place | null): Promise<number | null> {
  const needed = log.values.altitudeEllipsoidFt && !log.values.altitudeGeometricFt;
  if (!needed) return null;
  const at = threshold ?? { latDeg: log.values.latDeg[0]!, lonDeg: log.values.lonDeg[0]! };
  const geoidHeightM = await loadGeoid();
  return geoidHeightM(at.latDeg, at.lonDeg);
}
