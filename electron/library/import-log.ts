import type { DefinedFacility } from '../../core/analyze.ts';
import { draftsLast, isDraftedFrom } from '../../core/facility/drafted-from.ts';
import { issue, refused, usable, type Issue, type Outcome } from '../../core/issue/issue.ts';
import type { Job } from '../../core/log/log.ts';
import type { Ruling } from './assign-rules.ts';
import {
  debriefBytes,
  type Asked,
  type DebriefLog,
  type DebriefedBytes,
  type LogBytes,
} from './debrief-bytes.ts';
import type { FirstDays } from './first-days.ts';
import { keepFlight, type FlightToKeep } from './keep-flight.ts';
import { nothingToKeep, type ToKeep } from './to-keep.ts';
import { debriefsAt, logHere, type LogHere } from './kept-log.ts';
import { lessonOn } from './lessons.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';
import type { PackedDocument } from './packed-document.ts';
import { findPerson } from './people.ts';
import type { Lesson } from './tables.ts';

/** What is asked of an import, the same for every log but for the rule. */
export interface ImportAsked extends Asked {
  readonly facilities: readonly [DefinedFacility, ...DefinedFacility[]];
  /** Somebody named them: a log that is here is tried at those at which it has no debrief. */
  readonly areFacilitiesNamed?: boolean;
  /** Somebody named it: a log that is here is debriefed by it as well, where it has a debrief by another. */
  readonly isStandardNamed?: boolean;
  /** A debrief that is here, at one of the facilities by the standard, is made anew by what is stated now. */
  readonly isAnew?: boolean;
  readonly student: string | null;
  /** Of the lesson; null: the day on which the log begins. */
  readonly date: string | null;
  /** Whose the log is, from the days on which it may begin, where `student` does not say it. */
  readonly rule?: (days: FirstDays) => Ruling;
}

/** What became of one log, and what the library holds of it now. */
export type Imported = { readonly lessonId: string; readonly debriefIds: readonly string[] } & (
  | {
      readonly became: 'known';
      readonly fileName: string;
      /** Facilities at which it was tried now, in vain; empty where it was not read again. */
      readonly triedAt: readonly string[];
    }
  | {
      readonly became: 'kept';
      readonly approaches: number;
      readonly facilities: readonly string[];
      /** Whose it is now; null: nobody's. */
      readonly student: string | null;
      /** Where it stays, although another student or day was asked for; null where that did not happen. */
      readonly stays: { readonly student: string | null; readonly date: string } | null;
    }
);

/** A debrief of the log at one of the facilities. */
interface Made {
  readonly at: DefinedFacility;
  readonly document: PackedDocument;
}

/**
 * Reads a log and debriefs it at every facility that it was flown to; all of that is then to be kept. A log that is here
 * with a debrief is read again only for one that it has not, or that is to be made anew; one that is here without is
 * tried at the facilities that are given now. `debrief` may be a pool's: what is here is asked again when it is kept.
 */
export async function importLog(
  library: Library,
  log: LogBytes,
  given: ImportAsked,
  job: Job,
  debrief: DebriefLog = debriefBytes,
): Promise<ToKeep<Outcome<Imported>>> {
  const sha256 = sha256Of(log.bytes);
  const before = logHere(library, sha256);
  const asked = inOrderFor(sha256, given);
  const [first, ...others] = toTry(before, asked);
  if (!first) return nothingToKeep(usable(known(before!, [])));
  const tried = [first, ...others] as const;
  const read = await debrief(log, tried, { ...asked, packsLog: before === null }, job);
  if (!read.ok) return nothingToKeep(read);
  if (read.value.log.sha256 !== sha256) throw new Error('one log was asked for and another debriefed');
  const made = tried.map((at, i): Made => ({ at, document: read.value.documents[i]! }));
  const keep = (): Outcome<Imported> => {
    // Another file of the same bytes may have been kept meanwhile.
    const now = logHere(library, sha256);
    const wanted = toTry(now, asked);
    const flown = made.filter(({ at, document }) => document.approaches.length > 0 && wanted.includes(at));
    const issues = [...read.issues, ...notAnew(log.name, now, asked, flown)];
    if (now && flown.length === 0)
      return usable(known(now, before ? tried.map(({ facility }) => facility.name) : []), issues);
    const flight = flightToKeep(library, log, sha256, read.value, flown, asked, now !== null);
    if (!flight.ok) return flight;
    const stays = keepFlight(library, flight.value);
    return usable(kept(library, sha256, flown, stays), issues);
  };
  return { logs: [sha256], keep };
}

/** Drafts that nobody has confirmed come last, and one that was drafted from this log only where it is the only one. */
function inOrderFor(sha256: string, asked: ImportAsked): ImportAsked {
  const others = asked.facilities.filter(({ facility }) => !isDraftedFrom(facility, { sha256 }));
  const [first, ...rest] = draftsLast(others);
  return first ? { ...asked, facilities: [first, ...rest] } : asked;
}

/** Those at which there is something to be made that is not here, or is to be made anew. */
function toTry(here: LogHere | null, asked: ImportAsked): readonly DefinedFacility[] {
  const { facilities, areFacilitiesNamed, isStandardNamed, isAnew } = asked;
  if (!here || here.debriefs.length === 0) return facilities;
  return facilities.filter((at) => {
    if (hasDebrief(here, at, asked)) return isAnew;
    return debriefsAt(here, at.facility).length > 0 ? isStandardNamed : areFacilitiesNamed;
  });
}

/** Whether it is debriefed there by the standard that is asked for. */
function hasDebrief(here: LogHere, { facility }: DefinedFacility, { judging }: ImportAsked): boolean {
  return debriefsAt(here, facility).some(({ standard_id }) => standard_id === judging.standard.id);
}

/** Nothing is taken away because it is not found again: what was to be made anew and holds no approach then, stays. */
function notAnew(name: string, here: LogHere | null, asked: ImportAsked, flown: readonly Made[]): Issue[] {
  if (!here || !asked.isAnew) return [];
  return asked.facilities
    .filter((at) => hasDebrief(here, at, asked) && !flown.some((made) => made.at === at))
    .map(({ facility }) =>
      issue(
        'warning',
        'library-not-anew',
        `${name} holds no approach at ${facility.name} by what is stated now: its debrief stays as it is.`,
      ),
    );
}

function known({ fileName, lessonId, debriefs }: LogHere, triedAt: readonly string[]): Imported {
  return { became: 'known', fileName, triedAt, lessonId, debriefIds: debriefs.map(({ id }) => id) };
}

function kept(library: Library, sha256: string, flown: readonly Made[], stays: Lesson | null): Imported {
  const { lessonId, debriefs } = logHere(library, sha256)!;
  return {
    became: 'kept',
    lessonId,
    debriefIds: debriefs.map(({ id }) => id),
    approaches: flown.reduce((sum, { document }) => sum + document.approaches.length, 0),
    facilities: flown.map(({ at }) => at.facility.name),
    student: studentIn(library, lessonId),
    stays: stays && { student: nameOf(library, stays.student_id), date: stays.date },
  };
}

function studentIn(library: Library, lessonId: string): string | null {
  const lesson = from.selectFrom('lessons').select('student_id').where('id', '=', lessonId);
  return nameOf(library, library.first(lesson)!.student_id);
}

function nameOf(library: Library, id: string | null): string | null {
  if (id === null) return null;
  return library.first(from.selectFrom('people').select('name').where('id', '=', id))!.name;
}

function flightToKeep(
  library: Library,
  { name, bytes }: LogBytes,
  sha256: string,
  { log, packedLog }: DebriefedBytes,
  flown: readonly Made[],
  { student, date: statedDate, settings, judging, rule, isAnew = false }: ImportAsked,
  hasLesson: boolean,
): Outcome<FlightToKeep> {
  const { kind, fixes, startUtc, endUtc, firstDay, otherDays } = log;
  const ruling = rule?.({ firstDay, otherDays });
  const date = statedDate ?? ruling?.date ?? null;
  if (!hasLesson && date === null && firstDay === null)
    return refused('library-no-date', `${name} counts from its own start and names no day.`, {
      tip: 'Say it with --date 2026-05-01, or with --start.',
    });
  const { targetAirspeedKt, interceptAirspeedKt, vrefKt, conditions } = judging.stated;
  return usable({
    log: {
      sha256,
      file_name: name,
      bytes: bytes.length,
      kind,
      fixes,
      start_utc: startUtc,
      end_utc: endUtc,
    },
    bytes,
    packed: packedLog,
    isDateStated: date !== null,
    student: student ?? ruling?.student ?? null,
    lesson: {
      ...lessonOn(date ?? firstDay ?? startUtc.slice(0, 10)),
      ...bookedFacts(library, ruling),
      target_airspeed_kt: targetAirspeedKt,
      intercept_airspeed_kt: interceptAirspeedKt,
      vref_kt: vrefKt,
      conditions: conditions === 'not-stated' ? null : conditions,
    },
    debriefs: flown.map(({ at, document }) => ({ facility: at.facility, judging, settings, document })),
    isAnew,
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
