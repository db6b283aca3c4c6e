import { randomUUID } from 'node:crypto';
import type { Judging } from '../../core/debrief/compose-debrief.ts';
import type { Facility } from '../../core/facility/facility-schema.ts';
import type { LogSettings } from '../../core/log/log.ts';
import { keepDocument } from './documents.ts';
import { debriefsAt, facilitySha256, logHere } from './kept-log.ts';
import { keepLesson, moveLog, type LessonFacts } from './lessons.ts';
import { from, type Library } from './library.ts';
import type { PackedDocument } from './packed-document.ts';
import { keepPerson } from './people.ts';
import type { KeptLog, Lesson } from './tables.ts';

/** One log with everything that was made of it, to be kept whole or not at all. */
export interface FlightToKeep {
  readonly log: Omit<KeptLog, 'lesson_id' | 'added_utc'>;
  /** The file as it was: its hash is the log's. */
  readonly bytes: Uint8Array;
  /** The same as it lies in its file, where it was packed already. */
  readonly packed: Uint8Array | null;
  /** Null where nobody said. */
  readonly student: string | null;
  readonly lesson: LessonFacts;
  /** Whether somebody said the lesson's date; else it is the day of the log. */
  readonly isDateStated: boolean;
  readonly debriefs: readonly DebriefToKeep[];
  /** They take the place of those that are here, at the same facility by the same standard. */
  readonly isAnew: boolean;
}

interface DebriefToKeep {
  readonly facility: Facility;
  readonly judging: Judging;
  readonly settings: LogSettings;
  readonly document: PackedDocument;
}

/**
 * Keeps a flight, within a write with its log. The log's file is on the disk before the commit that names it, and all
 * else is in that commit: a crash leaves the flight whole or nothing of it. Gives the lesson in which the log stays
 * where another was asked for.
 */
export function keepFlight(library: Library, flight: FlightToKeep): Lesson | null {
  const { log, bytes, packed, student, lesson, isDateStated, debriefs, isAnew } = flight;
  library.logFiles.put(log.sha256, bytes, packed);
  // It may be here without a debrief, or another process may just have kept it.
  const known = library.first(from.selectFrom('logs').select('sha256').where('sha256', '=', log.sha256));
  if (!known) {
    const student_id = student === null ? null : keepPerson(library, 'student', student);
    const lesson_id = keepLesson(library, { ...lesson, student_id });
    const added_utc = new Date().toISOString();
    library.run(from.insertInto('logs').values({ ...log, lesson_id, added_utc }));
  }
  const asked = { student, date: isDateStated ? lesson.date : null };
  const stays = known ? moveLog(library, log.sha256, lesson, asked) : null;
  for (const debrief of debriefs) keepDebrief(library, log.sha256, debrief, isAnew);
  return stays;
}

function keepDebrief(library: Library, log_sha256: string, made: DebriefToKeep, isAnew: boolean): void {
  const { facility, settings, document } = made;
  const { standard, stated, heights, antennaHeightFt } = made.judging;
  const there = debriefsAt(logHere(library, log_sha256)!, facility);
  const known = there.find(({ standard_id }) => standard_id === standard.id);
  const facility_sha256 = keepFacility(library, facility);
  if (!isAnew && known?.facility_sha256 === facility_sha256) return;
  const madeOf = {
    facility_sha256,
    standard: JSON.stringify(standard),
    stated: JSON.stringify(stated),
    settings: JSON.stringify(settings),
    heights: heights ?? null,
    antenna_height_ft: antennaHeightFt ?? null,
  };
  const id = isAnew && known ? known.id : randomUUID();
  if (known?.id === id) library.run(from.updateTable('debriefs').set(madeOf).where('id', '=', id));
  else
    library.run(
      from.insertInto('debriefs').values({
        id,
        log_sha256,
        standard_id: standard.id,
        ...madeOf,
        engine_version: document.engine_version,
        // Named again with its document.
        document_sha256: '',
        made_utc: new Date().toISOString(),
      }),
    );
  keepDocument(library, id, document);
}

/** The id of the debrief of a log at a facility by a standard; null where there is none. */
export function findDebrief(
  library: Library,
  log_sha256: string,
  facility_sha256: string,
  standard_id: string,
): string | null {
  const known = library.first(
    from
      .selectFrom('debriefs')
      .select('id')
      .where('log_sha256', '=', log_sha256)
      .where('facility_sha256', '=', facility_sha256)
      .where('standard_id', '=', standard_id),
  );
  return known?.id ?? null;
}

/** The hash of this version of the facility, which is added if need be. Within a `write`. */
function keepFacility(library: Library, facility: Facility): string {
  const content = JSON.stringify(facility);
  const sha256 = facilitySha256(facility);
  const { name, ident = null, runway } = facility;
  library.run(
    from
      .insertInto('facilities')
      .values({
        sha256,
        name,
        ident,
        designator: runway.designator,
        content,
        added_utc: new Date().toISOString(),
      })
      .onConflict((there) => there.doNothing()),
  );
  return sha256;
}
