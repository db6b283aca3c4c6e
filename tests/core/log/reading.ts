import type { Issue, Outcome } from '../../../core/issue/issue.ts';
import type { Job, Log, LogSettings } from '../../../core/log/log.ts';
import { readLog } from '../../../core/log/read-log.ts';

export const idle: Job = { progress: () => undefined, cancelled: () => false };

/** Reads a text in chunks of a size, as a host would hand it over. */
export function read(text: string, settings: LogSettings = {}, chunkSize = 1 << 20): Promise<Outcome<Log>> {
  return readLog(
    { name: 'flight', sha256: () => 'hash', size: text.length, chunks: chunksOf(text, chunkSize) },
    settings,
    idle,
  );
}

/** The log of a text that must be usable. */
export async function readUsable(text: string, settings: LogSettings = {}, chunkSize?: number): Promise<Log> {
  const outcome = await read(text, settings, chunkSize);
  if (!outcome.ok) throw new Error(`refused: ${outcome.refusal.message}`);
  return outcome.value;
}

/** The refusal of a text that must not be usable. */
export async function readRefused(
  text: string,
  settings: LogSettings = {},
  chunkSize?: number,
): Promise<Issue> {
  const outcome = await read(text, settings, chunkSize);
  if (outcome.ok) throw new Error('a text that must be refused was read');
  return outcome.refusal;
}

export function codes(log: Log): string[] {
  return log.issues.map((issue) => issue.code);
}

export function issueOf(log: Log, code: string): Issue | undefined {
  return log.issues.find((issue) => issue.code === code);
}

export function* chunksOf(text: string, size: number): Generator<string> {
  for (let at = 0; at < text.length; at += size) yield text.slice(at, at + size);
}
