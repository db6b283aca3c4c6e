import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import type { Services } from '../bridge/calls.ts';
import type { GivenFiles } from './given-files.ts';
import type { NotesFile } from './notes-file.ts';
import type { Samples } from './samples.ts';

/** What both hosts do for the page. */
export function servicesOf(
  host: 'window' | 'browser',
  {
    samples,
    given,
    notes,
  }: { readonly samples: Samples; readonly given: GivenFiles; readonly notes: NotesFile },
): Services {
  return {
    about: async () => ({ version: ENGINE_VERSION, host }),
    samples: async () => samples.list(),
    readSample: async ({ file }) => samples.read(file),
    given: async () => given.list(),
    readGiven: async ({ token }) => given.read(token),
    notes: async () => notes.read(),
    saveNotes: async ({ revision, notes: saved }) => notes.save(revision, saved),
  };
}
