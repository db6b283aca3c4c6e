import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import { progressCsv } from '../../core/progress/progress-csv.ts';
import { progressOf } from '../../core/progress/progress-of.ts';
import { progressText } from '../../core/progress/progress-text.ts';
import type { GroupBy } from '../../core/progress/school/school-input.ts';
import { needsText } from '../../core/progress/school/needs-text.ts';
import { schoolCsv } from '../../core/progress/school/school-csv.ts';
import type { SchoolAsked, SchoolPage } from '../../core/progress/school/school-page.ts';
import { schoolText } from '../../core/progress/school/school-text.ts';
import { progressHtml } from '../../renderer/progress-page/progress-html.tsx';
import { isDay } from '../library/day.ts';
import type { Library } from '../library/library.ts';
import type { Watch } from '../library/watch.ts';
import type { Arguments } from './command.ts';
import type { LibraryRoom } from './with-library.ts';

/** A student's record as a text of that format. */
export async function studentRecord(
  library: Library,
  room: LibraryRoom,
  name: string,
  format: string,
  watch: Watch,
): Promise<Outcome<string>> {
  const student = room.personNamed(library, 'student', name);
  const unread = await room.makeMissingFacts(library, watch);
  const record = progressOf(room.progressInput(library, student, unread));
  if (format === 'json') return usable(`${JSON.stringify(record, null, 2)}\n`);
  if (format === 'html') return usable(progressHtml(record));
  return usable(format === 'csv' ? progressCsv(record) : progressText(record));
}

/** All students together as a text of that format. */
export async function schoolRecord(
  library: Library,
  room: LibraryRoom,
  options: Arguments['options'],
  format: string,
  watch: Watch,
): Promise<Outcome<string>> {
  const asked = askedOf(options);
  if (!asked.ok) return asked;
  await room.makeMissingFacts(library, watch);
  const page = room.schoolPage(library, asked.value);
  if (page === null)
    return refused('arguments', `No approach in the library was held to "${asked.value.measure}".`, {
      tip: `There is ${room
        .schoolMeasures(library)
        .map(({ id }) => id)
        .join(', ')}.`,
    });
  const { school, measures, needs } = asked.value.isNamed ? page : withoutIds(page);
  if (format === 'json')
    return usable(`${JSON.stringify({ ...school, needsByCriterion: needs }, null, 2)}\n`);
  if (format === 'csv') return usable(schoolCsv(school));
  return usable(`${needsText(needs, measures)}\n${schoolText(school)}`);
}

/** The library's ids lead to whom the numbers stand for: in what is given away the numbers stand in their place. */
function withoutIds(page: SchoolPage): SchoolPage {
  const { school, needs } = page;
  const groups = school.groups && {
    ...school.groups,
    groups: school.groups.groups.map((group) => ({
      ...group,
      key: school.groups!.by === 'instructor' ? group.label : group.key,
    })),
  };
  const named = <S extends { readonly name: string }>(student: S): S => ({
    ...student,
    studentId: student.name,
  });
  const students = school.students.map((student) => ({
    ...named(student),
    lessons: student.lessons.map((lesson) => ({ ...lesson, lessonId: `lesson ${lesson.ordinal}` })),
  }));
  return {
    ...page,
    school: { ...school, groups, students, needs: school.needs.map(named) },
    needs: needs.map(named),
  };
}

function askedOf(options: Arguments['options']): Outcome<SchoolAsked> {
  const one = (name: string) => options[name]?.[0] ?? null;
  for (const name of ['from', 'to']) {
    const day = one(name);
    if (day !== null && !isDay(day))
      return refused('arguments', `--${name} ${day} is no day.`, { tip: 'Write it as 2026-05-01.' });
  }
  const [from, to] = [one('from'), one('to')];
  if (from !== null && to !== null && from > to)
    return refused('arguments', `--from ${from} is after --to ${to}.`);
  const mix = Object.fromEntries(
    ['flown', 'aircraft', 'conditions'].flatMap((factor) =>
      options[factor] === undefined ? [] : [[factor, options[factor]]],
    ),
  );
  const filter = { standardKey: null, engineVersion: null, from, to, mix };
  return usable({
    measure: one('measure') ?? 'level',
    filter,
    groupBy: one('by') as GroupBy | null,
    isNamed: one('names') !== null,
  });
}
