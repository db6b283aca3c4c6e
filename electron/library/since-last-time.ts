import { sinceLast, type SinceLast } from '../../core/progress/since-last.ts';
import { from, type Library } from './library.ts';
import { factsOfStudent } from './student-facts.ts';

/** A debrief that is kept: of which log, at the facility of which name, by which standard. */
interface WhichDebrief {
  readonly sha256: string;
  readonly facility: string;
  readonly standardId: string;
}

/** What was flown better than the time before, of each approach of a kept debrief where something was. */
export function sinceLastTime(library: Library, { sha256, facility, standardId }: WhichDebrief): SinceLast[] {
  const lesson = library.first(
    from
      .selectFrom('logs')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .select('lessons.student_id')
      .where('logs.sha256', '=', sha256),
  );
  if (!lesson?.student_id) return [];
  const all = factsOfStudent(library, lesson.student_id);
  const asked = all.filter(
    (one) => one.logSha256 === sha256 && one.facility === facility && one.standard.id === standardId,
  );
  return asked.flatMap((one) => sinceLast(one, all) ?? []);
}
