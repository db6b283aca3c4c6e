import type { LogSettings } from '../../core/log/log.ts';
import type { Stated } from '../../core/standard/stated.ts';
import { from, type Library } from './library.ts';

/** A kept debrief with everything that it was made of, so that it can be made again; null where it is not there. */
export function keptDebrief(library: Library, id: string) {
  const kept = library.first(
    from
      .selectFrom('debriefs')
      .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
      .innerJoin('facilities', 'facilities.sha256', 'debriefs.facility_sha256')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .leftJoin('people', 'people.id', 'lessons.student_id')
      .selectAll('debriefs')
      .select([
        'logs.file_name',
        'facilities.content as facility',
        'lessons.id as lesson_id',
        'lessons.date',
        'people.name as student',
      ])
      .where('debriefs.id', '=', id),
  );
  if (kept === null) return null;
  return {
    name: kept.file_name,
    base64: Buffer.from(library.logFiles.read(kept.log_sha256, kept.file_name)).toString('base64'),
    facility: kept.facility,
    standard: kept.standard,
    standardId: kept.standard_id,
    stated: JSON.parse(kept.stated) as Stated,
    settings: JSON.parse(kept.settings) as LogSettings,
    heights: kept.heights,
    antennaHeightFt: kept.antenna_height_ft,
    lessonId: kept.lesson_id,
    student: kept.student,
    date: kept.date,
  };
}
