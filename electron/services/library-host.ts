import type { Job } from '../../core/log/log.ts';
import { Unusable } from '../bridge/gate.ts';
import type { DebriefPool } from '../library/debrief-pool.ts';
import type { Library } from '../library/library.ts';
import type { Opening } from '../library/open-library.ts';

/** All of the library's code. Its type alone: the code comes when the page first asks for something of it. */
export type LibraryRoom = typeof import('../library/entry.ts');

/** Threads: so many logs does a page hand over at a time. */
const DEBRIEFERS = 2;

type Work<T> = (library: Library, room: LibraryRoom) => T | Promise<T>;

/**
 * The library of an app that is open: opened when it is first asked for, and held until the app ends. What it refuses
 * to do reaches the page as its one sentence.
 */
export class LibraryHost {
  readonly folder: string;
  #open: Promise<Library> | null = null;
  #debriefers: DebriefPool | null = null;
  /** While the library must not be open here. */
  #apart: Promise<void> | null = null;
  readonly #underWay = new Set<Promise<unknown>>();
  #work: { what: string; share: number; isStopped: boolean } | null = null;

  constructor(folder: string) {
    this.folder = folder;
  }

  /** Null where no library was begun yet. */
  async ask<T>(work: Work<T>): Promise<T | null> {
    return refusing(this.folder, async (room) => {
      const isThere = this.#open !== null || room.isLibraryThere(this.folder);
      return isThere ? this.#run(room, 'existing', work) : null;
    });
  }

  /** The same, beginning one where there is none. */
  async use<T>(work: Work<T>, opening: Opening = 'create'): Promise<T> {
    return refusing(this.folder, (room) => this.#run(room, opening, work));
  }

  /** Long work, one at a time, of which the page can ask how far it is, and which it can stop. */
  work<T>(what: string, work: (library: Library, room: LibraryRoom, job: Job) => Promise<T>): Promise<T> {
    return this.#long(what, (job) => this.use((library, room) => work(library, room, job), 'existing'));
  }

  /** Long work for which the library must not be open here; what asks for it meanwhile waits. */
  apart<T>(what: string, work: (room: LibraryRoom, job: Job) => Promise<T>): Promise<T> {
    return this.#long(what, (job) =>
      refusing(this.folder, async (room) => {
        let ended = () => {};
        this.#apart = new Promise<void>((resolve) => (ended = resolve));
        try {
          await Promise.allSettled(this.#underWay);
          await this.close();
          return await work(room, job);
        } finally {
          this.#apart = null;
          ended();
        }
      }),
    );
  }

  /** What debriefs logs, in threads of their own. */
  debriefers(room: LibraryRoom): DebriefPool {
    return (this.#debriefers ??= room.debriefersOf(DEBRIEFERS));
  }

  underWay(): { what: string; share: number } | null {
    return this.#work && { what: this.#work.what, share: this.#work.share };
  }

  stop(): void {
    if (this.#work) this.#work.isStopped = true;
  }

  /** Ends what is under way where that is safe, and closes: what was confirmed is in the file. */
  async end(): Promise<void> {
    this.stop();
    await Promise.allSettled([...this.#underWay, this.#apart]);
    await this.close();
  }

  /** Puts what is open in order, so that nothing but the file is left of it. */
  async close(): Promise<void> {
    const [open, debriefers] = [this.#open, this.#debriefers];
    this.#open = null;
    this.#debriefers = null;
    await debriefers?.close();
    (await open?.catch(() => null))?.close();
  }

  async #long<T>(what: string, work: (job: Job) => Promise<T>): Promise<T> {
    if (this.#work !== null) throw new Unusable(`${this.#work.what}: try again when that has ended.`);
    const mine = { what, share: 0, isStopped: false };
    this.#work = mine;
    try {
      return await work({
        progress: (share) => void (mine.share = share ?? mine.share),
        cancelled: () => mine.isStopped,
      });
    } finally {
      this.#work = null;
    }
  }

  #run<T>(room: LibraryRoom, opening: Opening, work: Work<T>): Promise<T> {
    const waits = this.#apart;
    const running = (async () => {
      await waits;
      return work(await this.#opened(room, opening), room);
    })();
    this.#underWay.add(running);
    const end = () => void this.#underWay.delete(running);
    running.then(end, end);
    return running;
  }

  /** The library, opened once: closing any other handle of its file would give up the locks on it. */
  #opened(room: LibraryRoom, opening: Opening): Promise<Library> {
    this.#open ??= room.openLibrary(this.folder, opening).catch((error: unknown) => {
      // One that could not be opened is tried again when it is asked for again.
      this.#open = null;
      throw error;
    });
    return this.#open;
  }
}

async function refusing<T>(folder: string, work: (room: LibraryRoom) => Promise<T>): Promise<T> {
  const room = await import('../library/entry.ts');
  try {
    return await work(room);
  } catch (error) {
    const refusal = room.refusalOf(error, folder);
    if (refusal === null) throw error;
    throw new Unusable([refusal.message, refusal.tip].filter((words) => words !== null).join(' '));
  }
}
