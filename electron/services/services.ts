import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import type { Services } from '../bridge/calls.ts';
import type { GivenFiles } from './given-files.ts';
import type { LibraryHost } from './library-host.ts';
import { libraryServicesOf } from './library-services.ts';
import { LogCopies } from './log-copies.ts';
import { NotesFile } from './notes-file.ts';
import { progressServicesOf } from './progress-services.ts';
import { RecordsFile } from './records-file.ts';
import { RecentLogs } from './recent-logs.ts';
import type { Samples } from './samples.ts';

/** What both hosts do for the page. */
export function servicesOf(
  host: 'window' | 'browser',
  {
    samples,
    given,
    userFolder,
    library,
  }: {
    readonly samples: Samples;
    readonly given: GivenFiles;
    readonly userFolder: string;
    readonly library: LibraryHost;
  },
): Services {
  const notes = new NotesFile(userFolder);
  const copies = new LogCopies(userFolder);
  const recents = new RecentLogs(notes, copies);
  const records = new RecordsFile(userFolder);
  return {
    about: async () => ({ version: ENGINE_VERSION, host }),
    samples: async () => samples.list(),
    readSample: async ({ file }) => samples.read(file),
    given: async () => given.list(),
    readGiven: async ({ token }) => given.read(token),
    notes: async () => notes.read(),
    saveNotes: async (input) => recents.save(input),
    keepLog: (input) => recents.keep(input),
    keptLogs: async () => copies.list(),
    removeCopies: async () => recents.removeCopies(),
    readKept: (input) => recents.read(input),
    ...libraryServicesOf(library),
    ...progressServicesOf(library),
    records: async () => records.read(),
    keepRecords: async (input) => records.keep(input),
  };
}
