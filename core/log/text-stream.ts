import type { Job, LogSource } from './log.ts';

/** How much of a file is looked at before it is read: room for a header of thousands of columns. */
const HEAD_CHARS = 1 << 20;
/** Blocks handed to readers: at least this long, except for the last... */
const BLOCK_MIN_CHARS = 1 << 15;
/** ... and at most this long, so that progress and cancelling are never far away. */
const BLOCK_MAX_CHARS = 1 << 16;

/** A guess a little too high costs nothing, since memory that is never written is never taken... */
const EXPECTED_SLACK = 1.05;
/** ... but a size is only the host's word. */
const EXPECTED_MAX = 10_000_000;

/** The text of a file, from its beginning, in blocks of a handy size whatever the host's chunks are. */
export class TextStream {
  readonly head: string;
  /** Set once the job was cancelled. */
  cancelled = false;
  readonly #held: string[];
  readonly #rest: AsyncGenerator<string, undefined>;
  readonly #job: Job;
  readonly #size: number | null;

  private constructor(held: string[], rest: AsyncGenerator<string, undefined>, source: LogSource, job: Job) {
    this.#held = held;
    this.#rest = rest;
    this.#job = job;
    this.#size = source.size;
    this.head = held.join('').slice(0, HEAD_CHARS);
  }

  /** Reads the head of the file and waits there. */
  static async open(source: LogSource, job: Job): Promise<TextStream> {
    const rest = textsOf(source.chunks);
    const held: string[] = [];
    let length = 0;
    let cancelled = false;
    while (length < HEAD_CHARS) {
      cancelled = job.cancelled();
      if (cancelled) break;
      const next = await rest.next();
      if (next.done) break;
      held.push(next.value);
      length += next.value.length;
    }
    const stream = new TextStream(held, rest, source, job);
    stream.cancelled = cancelled;
    return stream;
  }

  /** All blocks, the head's included; ends early when the job is cancelled. */
  async *blocks(): AsyncGenerator<string> {
    let done = 0;
    const passed = (block: string): void => {
      done += block.length;
      this.#job.progress(this.#size === null ? null : Math.min(1, done / Math.max(1, this.#size)));
    };
    while (!this.#stop()) {
      const text = this.#held.shift() ?? (await this.#rest.next()).value;
      if (text === undefined) return;
      for (const block of cut(text)) {
        if (this.#stop()) return;
        yield block;
        passed(block);
      }
    }
  }

  /** How often something stands in the whole file if it goes on as in its head; 0 when the size is unknown. */
  expected(inHead: number): number {
    if (this.#size === null) return 0;
    const whole = (inHead * this.#size) / this.head.length;
    return Math.min(EXPECTED_MAX, Math.ceil(whole * EXPECTED_SLACK));
  }

  /** Lets go of the host's chunks. */
  async close(): Promise<void> {
    this.#held.length = 0;
    await this.#rest.return(undefined);
  }

  #stop(): boolean {
    this.cancelled ||= this.#job.cancelled();
    return this.cancelled;
  }
}

async function* textsOf(chunks: LogSource['chunks']): AsyncGenerator<string, undefined> {
  let pieces: string[] = [];
  let length = 0;
  let first = true;
  for await (const chunk of chunks) {
    const text = first ? withoutMark(chunk) : chunk;
    first &&= chunk === '';
    if (text === '') continue;
    pieces.push(withoutPadding(text));
    length += text.length;
    if (length < BLOCK_MIN_CHARS) continue;
    yield pieces.join('');
    pieces = [];
    length = 0;
  }
  if (pieces.length > 0) yield pieces.join('');
}

function* cut(text: string): Generator<string> {
  for (let at = 0; at < text.length; at += BLOCK_MAX_CHARS) {
    yield text.length <= BLOCK_MAX_CHARS ? text : text.slice(at, at + BLOCK_MAX_CHARS);
  }
}

/** A byte-order mark that the decoder left in the text. */
function withoutMark(text: string): string {
  return text.charCodeAt(0) === 0xfe_ff ? text.slice(1) : text;
}

/** Recorders pad their last sector with NUL: a run of them is as good as one. */
function withoutPadding(text: string): string {
  return text.includes('\0') ? text.replaceAll(/\0{2,}/g, '\0') : text;
}
