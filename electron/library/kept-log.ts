import type { Facility } from '../../core/facility/facility-schema.ts';
import { from, type Library } from './library.ts';
import { sha256Of } from './log-files.ts';

/** A log that is in the library, with its debriefs. */
export interface LogHere {
  readonly fileName: string;
  readonly lessonId: string;
  readonly debriefs: readonly DebriefHere[];
}

/** Where and by what a debrief was made. */
interface DebriefHere {
  readonly id: string;
  readonly facility_sha256: string;
  readonly name: string;
  readonly designator: string;
  readonly standard_id: string;
}

/** What the library holds of a log; null where it has none of these bytes. */
export function logHere(library: Library, sha256: string): LogHere | null {
  const log = library.first(
    from.selectFrom('logs').select(['file_name', 'lesson_id']).where('sha256', '=', sha256),
  );
  if (!log) return null;
  const debriefs = library.all(
    from
      .selectFrom('debriefs')
      .innerJoin('facilities', 'facilities.sha256', 'debriefs.facility_sha256')
      .select(['debriefs.id', 'facility_sha256', 'facilities.name', 'facilities.designator', 'standard_id'])
      .where('log_sha256', '=', sha256)
      .orderBy('made_utc'),
  );
  return { fileName: log.file_name, lessonId: log.lesson_id, debriefs };
}

/** Its debriefs at a facility: at this version of its file first, then at others that bear its name. */
export function debriefsAt({ debriefs }: LogHere, facility: Facility): DebriefHere[] {
  const sha256 = facilitySha256(facility);
  const { name, runway } = facility;
  const isThis = (one: DebriefHere) => one.facility_sha256 === sha256;
  const isOther = (one: DebriefHere) =>
    !isThis(one) && one.name === name && one.designator === runway.designator;
  return [...debriefs.filter(isThis), ...debriefs.filter(isOther)];
}

/** What a version of a facility goes by. */
export function facilitySha256(facility: Facility): string {
  return sha256Of(JSON.stringify(facility));
}
