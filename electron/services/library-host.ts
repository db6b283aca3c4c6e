import type { Job } from '../../core/log/log.ts';
import { Unusable } from '../bridge/gate.ts';
import type { Library } from '../library/library.ts';
import type { Opening } from '../library/open-library.ts';

/** All of the library's code. Its type alone: the code comes when the page first asks for something of it. */
export type LibraryRoom = typeof import('../library/entry.ts');

type Work<T> = (library: Library, room: LibraryRoom) => T | Promise<T>;

/**
 * The library of an app that is open: opened when it is first asked for, and held until the app ends. What it refuses
 * to do reaches the page as its one sentence.
 */
export class LibraryHost {
  readonly folder: string;
  #open: Promise<Library> | null = null;
  #apart: Promise<void> | null = null;
  #work: { what: string; share: number; isStopped: boolean } | null = null;

  constructor(folder: string) {
    this.folder = folder;
  }

  /** Null where no library was begun yet. */
  async ask<T>(work: Work<T>): Promise<T | null> {
    return this.#refusing(async (room) => {
      if (this.#open === null && !room.isLibraryThere(this.folder)) return null;
      return work(await this.#opened(room, 'existing'), room);
    });
  }

  /** The same, beginning one where there is none. */
  async use<T>(work: Work<T>, opening: Opening = 'create'): Promise<T> {
    return this.#refusing(async (room) => work(await this.#opened(room, opening), room));
  }

  /** Long work, one at a time, of which the page can ask how far it is, and which it can stop. */
  async work<T>(
    what: string,
    work: (library: Library, room: LibraryRoom, job: Job) => Promise<T>,
    opening: Opening = 'existing',
  ): Promise<T> {
    if (this.#work !== null) throw new Unusable(`${this.#work.what}: try again when that has ended.`);
    const mine = { what, share: 0, isStopped: false };
    this.#work = mine;
    const job: Job = {
      progress: (share) => void (mine.share = share ?? mine.share),
      cancelled: () => mine.isStopped,
    };
    try {
      return await this.use((library, room) => work(library, room, job), opening);
    } finally {
      this.#work = null;
    }
  }

  /** Long work for which the library must not be open here; what asks for it meanwhile waits. */
  async apart<T>(what: string, work: (room: LibraryRoom, job: Job) => Promise<T>): Promise<T> {
    return this.work(
      what,
      async (_, room, job) => {
        await this.close();
        let ended = () => {};
        this.#apart = new Promise<void>((resolve) => (ended = resolve));
        try {
          return await work(room, job);
        } finally {
          this.#apart = null;
          ended();
        }
      },
      'create',
    );
  }

  underWay(): { what: string; share: number } | null {
    return this.#work && { what: this.#work.what, share: this.#work.share };
  }

  stop(): void {
    if (this.#work) this.#work.isStopped = true;
  }

  /** Puts what is open in order, so that nothing but the file is left of it. */
  async close(): Promise<void> {
    const open = this.#open;
    this.#open = null;
    (await open?.catch(() => null))?.close();
  }

  /** The library, opened once: closing any other handle of its file would give up the locks on it. */
  async #opened(room: LibraryRoom, opening: Opening): Promise<Library> {
    await this.#apart;
    this.#open ??= room.openLibrary(this.folder, opening).catch((error: unknown) => {
      // One that could not be opened is tried again when it is asked for again.
      this.#open = null;
      throw error;
    });
    return this.#open;
  }

  async #refusing<T>(work: (room: LibraryRoom) => Promise<T>): Promise<T> {
    const room = await import('../library/entry.ts');
    try {
      return await work(room);
    } catch (error) {
      const refusal = room.refusalOf(error, this.folder);
      if (refusal === null) throw error;
      throw new Unusable([refusal.message, refusal.tip].filter((words) => words !== null).join(' '));
    }
  }
}
