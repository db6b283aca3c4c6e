import { from, type Library } from './library.ts';

/**
 * Log files and tables kept in step. A file is put or removed while its name stands in `pending_logs`, so that whoever
 * opens the library after a crash knows which files nobody got to name. A file that was never announced is left alone:
 * it may belong to a newer copy of the library than the one that lies here now.
 */
export function announceLogs(library: Library, sha256s: readonly string[]): void {
  for (const sha256 of sha256s)
    library.run(
      from
        .insertInto('pending_logs')
        .values({ sha256 })
        .onConflict((there) => there.doNothing()),
    );
}

/**
 * Work in which these logs come: announced first in a commit of its own, and no more when the work is done and their
 * files are on the disk. Another process that opens the library in between takes the announcement for a crash's, and it
 * is made again.
 */
export function writeWithLogs<T>(library: Library, sha256s: readonly string[], work: () => T): T {
  if (sha256s.length === 0) return library.write(work);
  for (;;) {
    library.write(() => announceLogs(library, sha256s));
    const done = library.write(() => {
      if (!sha256s.every((sha256) => isAnnounced(library, sha256))) return null;
      const made = { value: work() };
      library.logFiles.flush();
      for (const sha256 of sha256s) library.run(from.deleteFrom('pending_logs').where('sha256', '=', sha256));
      return made;
    });
    if (done) return done.value;
  }
}

/** Removes the announced files that no row of `logs` names, and says how many there were. */
export function sweepLogs(library: Library): number {
  if (!library.first(from.selectFrom('pending_logs').select('sha256').limit(1))) return 0;
  return library.write(() => {
    let removed = 0;
    for (const { sha256 } of library.all(from.selectFrom('pending_logs').select('sha256'))) {
      const isNamed = library.first(from.selectFrom('logs').select('sha256').where('sha256', '=', sha256));
      if (!isNamed) {
        library.logFiles.remove(sha256);
        removed++;
      }
      library.run(from.deleteFrom('pending_logs').where('sha256', '=', sha256));
    }
    return removed;
  });
}

function isAnnounced(library: Library, sha256: string): boolean {
  return (
    library.first(from.selectFrom('pending_logs').select('sha256').where('sha256', '=', sha256)) !== null
  );
}
