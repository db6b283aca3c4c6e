import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Services } from '../bridge/calls.ts';
import { Gone, Unusable } from '../bridge/gate.ts';
import type { LIBRARY_CALLS } from '../bridge/library-calls.ts';
import type { Library } from '../library/library.ts';
import { keepInLibrary } from './keep-in-library.ts';
import type { LibraryHost, LibraryRoom } from './library-host.ts';
import { recomputeAll } from './recompute-all.ts';

type LibraryServices = Pick<Services, keyof typeof LIBRARY_CALLS>;

const NOT_BEGUN = 'Nothing was kept in the library yet.';

/** What the host does for the page with its library. */
export function libraryServicesOf(host: LibraryHost): LibraryServices {
  return {
    ...listsOf(host),
    ...recordOf(host),
    ...assignmentOf(host),
    ...studentsOf(host),
    ...wholeOf(host),
    ...lessonsOf(host),
  };
}

type Lists = 'library' | 'libraryFlights' | 'libraryLogs' | 'logsWithoutApproach' | 'lesson';

function listsOf(host: LibraryHost): Pick<LibraryServices, Lists | 'readDebrief'> {
  const nobody = {
    students: [],
    instructors: [],
    facilities: [],
    approaches: 0,
    lastMove: null,
    ofOtherVersions: 0,
  };
  return {
    library: async () => {
      const overview = await host.ask((library, room) => room.overviewOf(library));
      return { isBegun: overview !== null, folder: host.folder, ...(overview ?? nobody) };
    },
    libraryFlights: async ({ filter, order, from, count }) =>
      (await host.ask((library, room) => room.flightRows(library, filter, order, { from, count }))) ?? {
        total: 0,
        rows: [],
      },
    libraryLogs: async ({ filter }) =>
      (await host.ask((library, room) => room.flightLogs(library, filter))) ?? [],
    logsWithoutApproach: async () =>
      (await host.ask((library, room) => room.logsWithoutApproach(library))) ?? [],
    lesson: async ({ id }) => {
      const page = await host.ask((library, room) => room.lessonPage(library, id));
      if (page === null) throw gone('lesson');
      return page;
    },
    readDebrief: async ({ debriefId }) => {
      const kept = await host.ask((library, room) => room.keptDebrief(library, debriefId));
      if (kept === null) throw gone('debrief');
      return kept;
    },
  };
}

type Kept =
  'changeLesson' | 'addNote' | 'giveEstimate' | 'agreeGoal' | 'reachGoal' | 'signDebrief' | 'readRoster';

function recordOf(host: LibraryHost): Pick<LibraryServices, Kept> {
  return {
    changeLesson: ({ id, change: { instructor, ...facts } }) =>
      existing(host, (library, room) => {
        if (room.lessonPage(library, id) === null) throw gone('lesson');
        const named =
          instructor === undefined
            ? {}
            : { instructor_id: instructor && personOf(library, room, 'instructor', instructor) };
        room.changeLesson(library, id, { ...facts, ...named });
      }),
    addNote: ({ lessonId, debriefId, aboutUtc, author, text }) =>
      existing(host, (library, room) => {
        if (room.lessonPage(library, lessonId) === null) throw gone('lesson');
        room.addNote(library, {
          lesson_id: lessonId,
          debrief_id: debriefId,
          about_utc: aboutUtc,
          author_id: author && personOf(library, room, 'instructor', author),
          text,
        });
      }),
    giveEstimate: ({ debriefId, aboutUtc, level, words }) =>
      existing(host, (library, room) => {
        if (room.documentOf(library, debriefId) === null) throw gone('debrief');
        if (level === null && !words) throw new Unusable('An estimate is a level, words, or both.');
        room.addEstimate(library, {
          debrief_id: debriefId,
          about_utc: aboutUtc,
          level,
          words: words || null,
        });
      }),
    agreeGoal: ({ studentId, lessonId, text }) =>
      existing(host, (library, room) => {
        if (room.personById(library, studentId) === null) throw gone('student');
        room.agreeGoal(library, { student_id: studentId, lesson_id: lessonId, text });
      }),
    reachGoal: ({ id, isReached }) =>
      existing(host, (library, room) => {
        if (!room.reachGoal(library, id, isReached)) throw gone('goal');
      }),
    signDebrief: ({ debriefId, document, name, act }) =>
      existing(host, (library, room) => {
        const current = room.documentOf(library, debriefId);
        if (current === null) throw gone('debrief');
        if (current !== document)
          throw new Unusable('The debrief was made anew meanwhile: look at it before you sign it.');
        room.sign(library, {
          debrief_id: debriefId,
          person_id: personOf(library, room, 'instructor', name),
          act,
        });
      }),
    readRoster: ({ text }) => host.use((library, room) => rosterRead(library, room, text)),
  };
}

function assignmentOf(
  host: LibraryHost,
): Pick<LibraryServices, 'keepInLibrary' | 'moveLogs' | 'undoMove' | 'whereKept'> {
  return {
    keepInLibrary: (input) => keepInLibrary(host, input),
    moveLogs: async ({ sha256s, student, date }) => {
      const move = await host.ask((library, room) => {
        const studentId = student && personOf(library, room, 'student', student);
        return room.moveLogs(library, sha256s, { studentId, date });
      });
      return { move };
    },
    undoMove: async ({ id }) => ({
      move: await host.ask((library, room) => {
        // Another may have moved something meanwhile, which is not what was to be undone.
        if (room.lastMove(library)?.id !== id)
          throw new Unusable('That was not the last move any more: look at what is shown now.');
        return room.undoMove(library);
      }),
    }),
    whereKept: async ({ sha256s }) =>
      (await host.ask((library, room) => room.whereKept(library, sha256s))) ?? [],
  };
}

function studentsOf(host: LibraryHost): Pick<LibraryServices, 'holdings' | 'deleteStudent'> {
  return {
    holdings: async ({ studentId }) => {
      const held = await host.ask((library, room) => {
        const person = room.personById(library, studentId);
        return person && { name: person.name, ...room.holdingsOf(library, person) };
      });
      if (held === null) throw gone('student');
      return { ...held, logs: held.logs.length };
    },
    deleteStudent: async ({ studentId }) => {
      const deleted = await host.ask((library, room) => {
        const person = room.personById(library, studentId);
        if (!person) return null;
        const { logs } = room.holdingsOf(library, person);
        return { ...room.deleteStudent(library, person), logs };
      });
      if (deleted === null) throw gone('student');
      const { unfinished, left, logs } = deleted;
      return {
        logs,
        left: [
          ...(unfinished
            ? [`Bytes may still be on the disk: ${unfinished.message} \`halfdot check\` does the rest.`]
            : []),
          ...left.map((folder) => `${folder} was moved aside by a restore, and may hold this student too.`),
        ],
      };
    },
  };
}

type Whole =
  | 'backUpLibrary'
  | 'exportLibrary'
  | 'recomputeLibrary'
  | 'backups'
  | 'restoreLibrary'
  | 'libraryWork'
  | 'stopLibraryWork';

function wholeOf(host: LibraryHost): Pick<LibraryServices, Whole> {
  const backups = `${host.folder}-backups`;
  const exports = `${host.folder}-exports`;
  return {
    backUpLibrary: () =>
      host.work('A backup is being made', async (library, room, job) => {
        const folder = freeFolder(backups);
        return { folder, ...(await room.backUp(library, folder, room.watchBy(job))) };
      }),
    exportLibrary: ({ isPseudonymous }) =>
      host.work('The library is being exported', async (library, room, job) => {
        const folder = freeFolder(exports);
        const asked = { pseudonyms: isPseudonymous, logs: !isPseudonymous };
        return { folder, ...(await room.exportLibrary(library, folder, asked, room.watchBy(job))) };
      }),
    recomputeLibrary: () =>
      host.work('Debriefs are made anew', (library, room, job) => recomputeAll(host, library, room, job)),
    backups: async () => backupsIn(backups),
    restoreLibrary: ({ name }) => {
      // Of those that are listed: a name is no path.
      if (!backupsIn(backups).some((backup) => backup.name === name))
        throw new Unusable(`There is no backup ${name} any more.`);
      return host.apart('A backup is being restored', async (room, job) =>
        restoredWords(await room.restore(host.folder, join(backups, name), room.watchBy(job))),
      );
    },
    libraryWork: async () => host.underWay(),
    stopLibraryWork: async () => {
      host.stop();
      return {};
    },
  };
}

type Restored = Awaited<ReturnType<LibraryRoom['restore']>>;

function restoredWords({ logs, missing, before }: Restored): { words: string } {
  const many = logs === 1 ? '1 log' : `${logs} logs`;
  const lost = missing.length === 0 ? '' : ` Not whole in it: ${missing.join(', ')}.`;
  const was = before === null ? '' : ` What was here before is kept in ${before}.`;
  return { words: `${many} brought back.${lost}${was}` };
}

function rosterRead(library: Library, room: LibraryRoom, text: string) {
  const { people, issues } = room.rosterOf(text);
  const { added, known } = room.addRoster(library, people);
  return {
    added: added.map(({ name }) => name),
    known: known.length,
    refused: issues.map(({ message, tip }) => [message, tip].filter((words) => words !== null).join(' ')),
  };
}

/** Another window or command may have taken it away. */
function gone(what: 'lesson' | 'debrief' | 'student' | 'goal'): Gone {
  return new Gone(`This ${what} is not in the library any more.`);
}

async function existing(
  host: LibraryHost,
  work: (library: Library, room: LibraryRoom) => void,
): Promise<Record<never, never>> {
  const done = await host.ask((library, room) => {
    work(library, room);
    return true;
  });
  if (done === null) throw new Unusable(NOT_BEGUN);
  return {};
}

/** Added if need be. */
function personOf(library: Library, room: LibraryRoom, role: 'student' | 'instructor', name: string): string {
  return library.write(() => room.keepPerson(library, role, name));
}

/** A folder that is not there yet, named by the moment; what an interrupted one has left there goes. */
function freeFolder(parent: string): string {
  if (existsSync(parent))
    for (const name of readdirSync(parent))
      if (/^\d{4}-.*\.\d+\.part$/.test(name)) rmSync(join(parent, name), { recursive: true, force: true });
  const moment = new Date().toISOString().slice(0, 19).replaceAll(':', '');
  for (let n = 1; ; n++) {
    const folder = join(parent, n === 1 ? moment : `${moment}-${n}`);
    if (!existsSync(folder)) return folder;
  }
}

const BACKUP = /^(\d{4}-\d\d-\d\d)T(\d\d)(\d\d)(\d\d)(?:-\d+)?$/;

/** Those that are whole, the newest first: a folder has its name once all of it is on the disk. */
function backupsIn(folder: string): { name: string; madeUtc: string }[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .flatMap((name) => {
      const parts = BACKUP.exec(name);
      if (!parts || !existsSync(join(folder, name, 'library.sqlite'))) return [];
      // By its name: a copy of a file has another time.
      const [, day, hour, minute, second] = parts;
      return [{ name, madeUtc: `${day}T${hour}:${minute}:${second}.000Z` }];
    })
    .toSorted((a, b) => (a.name < b.name ? 1 : -1));
}

function lessonsOf(host: LibraryHost): Pick<LibraryServices, 'lessons'> {
  return {
    lessons: async ({ studentId }) => {
      const lessons = (await host.ask((library, room) => room.listLessons(library, studentId))) ?? [];
      return lessons
        .filter(({ student }) => studentId !== null || student === null)
        .map(({ id, date, logs, approaches }) => ({ id, date, logs, approaches }));
    },
  };
}
