/** What commands use of the library: one door, through which none of it is loaded before a command asks for it. */
export { backUp } from './backup.ts';
export { checkLibrary } from './check-library.ts';
export { debriefersOf } from './debrief-pool.ts';
export { deleteStudent, holdingsOf } from './delete-student.ts';
export { exportLibrary } from './export-library.ts';
export { importLog } from './import-log.ts';
export { inTurn } from './in-turn.ts';
export { listApproaches, listFacilities, listLessons, listStudents } from './lists.ts';
export { mergeExport } from './merge-export.ts';
export { openLibrary } from './open-library.ts';
export { personNamed } from './people.ts';
export { otherEngines, recompute } from './recompute.ts';
export { LibraryRefusal, refusalOf } from './refusal.ts';
export { restore } from './restore.ts';
export { watchBy } from './watch.ts';
