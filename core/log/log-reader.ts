import type { Outcome } from '../issue/issue.ts';
import type { Log, LogSettings, LogSource } from './log.ts';
import type { TextStream } from './text-stream.ts';

/**
 * One file format. To add one: write a reader in a file of its own and put it in the list in `read-log.ts`.
 *
 * A reader is asked by content, never by the file's name. It reads the text once, from its beginning and in
 * blocks, keeps numbers only, and hands over a `Log` (see there for units, order and absence). Whatever is wrong
 * with the file is a value: a refusal when nothing can be used, else an issue in `Log.issues` with its count and
 * first line. It must not depend on where the blocks are cut.
 */
export interface LogReader {
  readonly kind: Log['kind'];
  /** Whether text that begins so (at most `HEAD_CHARS` characters) is of this format. */
  recognises(head: string): boolean;
  /** Reads to the end, or until `text.cancelled`; then the outcome is thrown away by the caller. */
  read(text: TextStream, source: LogSource, settings: LogSettings): Promise<Outcome<Log>>;
}
