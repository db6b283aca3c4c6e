import { z } from 'zod';
import { LARGEST_BASE64, MOST_RECENTS } from './kept-limits.ts';
import { LIBRARY_CALLS } from './library-calls.ts';
import { OWN_FACILITIES } from './own-facilities-bounds.ts';
import { OWN_STANDARDS } from './own-standards-bounds.ts';
import { PROGRESS_CALLS } from './progress-calls.ts';
import { RECENT, SHA256 } from './recent.ts';
import { SOURCE_CALLS } from './source-calls.ts';

const NOTHING = z.strictObject({});
const TOKEN = z.string().min(1).max(64);

/** A file that the host may hand to the page: named by a token, never by a path. */
const GIVEN_FILE = z.strictObject({ token: TOKEN, name: z.string(), bytes: z.number().int().nonnegative() });
/** Bytes as base64, since both ways to the page carry JSON. */
const CONTENT = z.strictObject({ name: z.string(), base64: z.string() });

/** One of the shipped flights, with what its people stated. */
const SAMPLE = z.strictObject({
  file: z.string(),
  facility: z.string(),
  flown: z.string(),
  shows: z.string(),
  /** Options of the command by name, as strings. */
  stated: z.record(z.string(), z.string()),
});

/**
 * A page keeps no more than its bounds say. What several windows have kept at once is put together, and may be as many
 * times more: that is never refused.
 */
const WINDOWS = 10;

/** What the app remembers until there is a library. Everything is the user's own; nothing of it leaves the machine. */
export const NOTES = z.strictObject({
  format: z.literal('halfdot-notes/1'),
  /** Facility files as their user wrote them, by an id of the app's. */
  facilities: z
    .array(
      z.strictObject({
        id: z.string().min(1).max(64),
        text: z.string().max(OWN_FACILITIES.characters),
      }),
    )
    .max(WINDOWS * OWN_FACILITIES.count),
  /** Files of standards of the user's own, likewise. Notes from before there were any have none. */
  standards: z
    .array(
      z.strictObject({
        id: z.string().min(1).max(64),
        text: z.string().max(OWN_STANDARDS.characters),
      }),
    )
    .max(WINDOWS * OWN_STANDARDS.count)
    .default([]),
  /** What was typed into facilities and standards and not kept yet, by their ids; older notes have none. */
  drafts: z.optional(z.record(z.string().min(1).max(64), z.string().max(OWN_FACILITIES.characters))),
  /** Roles by header text, for logs with these headers; null leaves the column out. */
  mappings: z.record(z.string(), z.record(z.string(), z.string().nullable())),
  /** Units by header text, for logs with these headers. Notes that were kept before there were any have none. */
  units: z.record(z.string(), z.record(z.string(), z.string())).exactOptional(),
  /** Logs opened lately, newest first. */
  recents: z.array(RECENT).max(MOST_RECENTS),
  settings: z.strictObject({
    dots: z.union([z.literal(2), z.literal(5)]),
    standard: z.string(),
    theme: z.enum(['system', 'light', 'dark']),
    /** Whether the student is asked before a debrief is shown; notes of before there was a library do not say. */
    asksFirst: z.boolean().exactOptional(),
  }),
});
export type Notes = z.infer<typeof NOTES>;

/**
 * Every call that the page can make of its host: what goes in and what comes back. Both hosts serve this map and
 * nothing else; neither is ever given a path or a piece of code.
 */
export const CALLS = {
  about: {
    input: NOTHING,
    output: z.strictObject({ version: z.string(), host: z.enum(['window', 'browser']) }),
  },
  samples: { input: NOTHING, output: z.array(SAMPLE) },
  readSample: { input: z.strictObject({ file: z.string().max(200) }), output: CONTENT },
  /** Files named when the app was started, or handed to it since. */
  given: { input: NOTHING, output: z.array(GIVEN_FILE) },
  readGiven: { input: z.strictObject({ token: TOKEN }), output: CONTENT },
  /** `revision` counts what was saved: who saves names the one that it started from. */
  notes: { input: NOTHING, output: z.strictObject({ revision: z.number().int(), notes: NOTES }) },
  saveNotes: {
    input: z.strictObject({ revision: z.number().int(), notes: NOTES }),
    output: z.discriminatedUnion('saved', [
      z.strictObject({ saved: z.literal(true), revision: z.number().int() }),
      /** `isStale`: another has saved since; whoever fetches the notes anew can put his own change to them. */
      z.strictObject({ saved: z.literal(false), isStale: z.boolean(), why: z.string() }),
    ]),
  },
  /** Keeps a copy of a log that the saved notes name among those opened lately. */
  keepLog: {
    input: z.strictObject({ name: z.string(), base64: z.string().max(LARGEST_BASE64) }),
    output: z.discriminatedUnion('kept', [
      z.strictObject({ kept: z.literal(true), sha256: SHA256 }),
      z.strictObject({ kept: z.literal(false), why: z.string() }),
    ]),
  },
  /** Which logs a copy is kept of. */
  keptLogs: { input: NOTHING, output: z.array(SHA256) },
  /** Removes every copy, also those that no list ever named, once the saved notes name none. */
  removeCopies: { input: NOTHING, output: NOTHING },
  readKept: { input: z.strictObject({ sha256: SHA256 }), output: CONTENT },
  ...LIBRARY_CALLS,
  ...PROGRESS_CALLS,
  ...SOURCE_CALLS,
} as const;

export type CallName = keyof typeof CALLS;
export type Input<N extends CallName> = z.infer<(typeof CALLS)[N]['input']>;
export type Output<N extends CallName> = z.infer<(typeof CALLS)[N]['output']>;

/** What a host has to be able to do. */
export type Services = { readonly [N in CallName]: (input: Input<N>) => Promise<Output<N>> };

/** What happens at the host without being asked for; the one way from it to the page. */
export interface HostEvent {
  /** More files were named; the menu's Print was chosen. */
  readonly kind: 'given' | 'print';
}
