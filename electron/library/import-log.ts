import type { DefinedFacility } from '../../core/analyze.ts';
import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import type { Job } from '../../core/log/log.ts';
import { utcText } from '../../core/units/utc.ts';
import type { Ruling } from './assign-rules.ts';
import { debriefBytes, type Asked, type DebriefedBytes, type LogBytes } from './debrief-bytes.ts';
import { keepFlight, type FlightToKeep } from './keep-flight.ts';
import { lessonOn } from './lessons.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import { findPerson } from './people.ts';

/** What is asked of an import, the same for every log but for the rule. */
export interface ImportAsked extends Asked {
  readonly facilities: readonly [DefinedFacility, ...DefinedFacility[]];
  readonly student: string | null;
  /** Of the lesson; null: the day on which the log begins. */
  readonly date: string | null;
  /** A debrief that is kept already is made anew, by what is stated now. */
  readonly isAnew?: boolean;
  /** Whose the log is, from the day on which it begins (null where it names none), where `student` does not say it. */
  readonly rule?: (firstDay: string | null) => Ruling;
}

/** What became of one log. */
type Imported =
  | { readonly became: 'known'; readonly fileName: string }
  | {
      readonly became: 'kept';
      readonly approaches: number;
      readonly facilities: readonly string[];
      /** Where it stays, although another student or day was asked for; null where that did not happen. */
      readonly stays: { readonly student: string | null; readonly date: string } | null;
    };

/**
 * Reads a log, debriefs it at every facility that it was flown to, and keeps all of that. A log that is here with a
 * debrief is not read again; one that is here without is tried at the facilities that are given now.
 */
export async function importLog(
  library: Library,
  log: LogBytes,
  asked: ImportAsked,
  job: Job,
): Promise<Outcome<Imported>> {
  const sha256 = sha256Of(log.bytes);
  const known = library.first(
    from
      .selectFrom('logs')
      .leftJoin('debriefs', 'debriefs.log_sha256', 'logs.sha256')
      .select(['logs.file_name', 'debriefs.id'])
      .where('logs.sha256', '=', sha256),
  );
  if (known?.id) return usable({ became: 'known', fileName: known.file_name });
  const debriefed = await debriefBytes(log, asked.facilities, asked, job);
  if (!debriefed.ok) return debriefed;
  const flight = flightToKeep(library, log, sha256, debriefed.value, asked);
  if (!flight.ok) return flight;
  const { debriefs } = flight.value;
  if (known && debriefs.length === 0) return usable({ became: 'known', fileName: known.file_name });
  const stays = keepFlight(library, flight.value);
  return usable(
    {
      became: 'kept',
      approaches: debriefs.reduce((sum, { debrief }) => sum + debrief.approaches.length, 0),
      facilities: debriefs.map(({ facility }) => facility.name),
      stays: stays && { student: nameOf(library, stays.student_id), date: stays.date },
    },
    debriefed.issues,
  );
}

function nameOf(library: Library, id: string | null): string | null {
  if (id === null) return null;
  return library.first(from.selectFrom('people').select('name').where('id', '=', id))!.name;
}

function flightToKeep(
  library: Library,
  { name, bytes }: LogBytes,
  sha256: string,
  { flight, debriefs }: DebriefedBytes,
  { facilities, student, date: statedDate, settings, judging, rule }: ImportAsked,
): Outcome<FlightToKeep> {
  const { log, track } = flight;
  const start_utc = utcText(track.timeS[0]!)!;
  const firstDay =
    log.timeReference === 'elapsed' && settings.startS === undefined ? null : start_utc.slice(0, 10);
  const ruling = rule?.(firstDay);
  const date = statedDate ?? ruling?.date ?? null;
  if (date === null && firstDay === null)
    return refused('library-no-date', `${name} counts from its own start and names no day.`, {
      tip: 'Say it with --date 2026-05-01, or with --start.',
    });
  const { targetAirspeedKt, interceptAirspeedKt, vrefKt, conditions } = judging.stated;
  return usable({
    log: {
      sha256,
      file_name: name,
      bytes: bytes.length,
      kind: log.kind,
      fixes: track.count,
      start_utc,
      end_utc: utcText(track.timeS[track.count - 1]!)!,
    },
    bytes,
    isDateStated: date !== null,
    student: student ?? ruling?.student ?? null,
    lesson: {
      ...lessonOn(date ?? start_utc.slice(0, 10)),
      ...bookedFacts(library, ruling),
      target_airspeed_kt: targetAirspeedKt,
      intercept_airspeed_kt: interceptAirspeedKt,
      vref_kt: vrefKt,
      conditions: conditions === 'not-stated' ? null : conditions,
    },
    debriefs: debriefs.flatMap((debrief, i) =>
      debrief.approaches.length === 0
        ? []
        : [{ facility: facilities[i]!.facility, judging, settings, debrief }],
    ),
  });
}

/** What a lesson that is added takes from a booking. */
function bookedFacts(library: Library, ruling: Ruling | undefined) {
  if (!ruling) return {};
  const { aircraft, instructor, lessonNumber, objective } = ruling;
  const instructor_id =
    instructor === null ? null : (findPerson(library, 'instructor', instructor)?.id ?? null);
  return { aircraft, instructor_id, syllabus_number: lessonNumber, objective };
}
