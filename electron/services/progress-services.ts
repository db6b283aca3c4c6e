import { progressOf } from '../../core/progress/progress-of.ts';
import type { Services } from '../bridge/calls.ts';
import { Gone } from '../bridge/gate.ts';
import type { UnreadDebrief } from '../library/missing-facts.ts';
import type { LibraryHost } from './library-host.ts';

/** How students go on, as the page shows it. */
export function progressServicesOf(
  host: LibraryHost,
): Pick<Services, 'studentProgress' | 'schoolProgress' | 'sinceLast'> {
  const facts = new Facts(host);
  return {
    studentProgress: async ({ studentId }) => {
      const unread = await facts.complete();
      const record = await host.ask((library, room) => {
        const student = room.personById(library, studentId);
        return student && progressOf(room.progressInput(library, student, unread));
      });
      if (record === null) throw new Gone('This student is not in the library any more.');
      return record;
    },
    sinceLast: async (which) => (await host.ask((library, room) => room.sinceLastTime(library, which))) ?? [],
    schoolProgress: async (asked) => {
      await facts.complete();
      // The criterion that was chosen may be gone with the approaches that were held to it.
      return host.ask(
        (library, room) =>
          room.schoolPage(library, asked) ?? room.schoolPage(library, { ...asked, measure: 'level' }),
      );
    },
  };
}

/** What progress reads of the approaches, which is made for those that have none. */
class Facts {
  readonly #host: LibraryHost;
  #making: Promise<void> | null = null;
  #unread: readonly UnreadDebrief[] = [];
  /** Approaches for which none could be made: they are not tried at every look. */
  #lacking = 0;

  constructor(host: LibraryHost) {
    this.#host = host;
  }

  /** Makes what is missing, as long work that can be stopped; who asks meanwhile waits for it. Gives what is unreadable. */
  async complete(): Promise<readonly UnreadDebrief[]> {
    const lacking = (await this.#host.ask((library, room) => room.approachesWithoutFacts(library))) ?? 0;
    if (lacking !== this.#lacking) {
      this.#making ??= this.#make().finally(() => (this.#making = null));
      await this.#making;
    }
    return this.#unread;
  }

  async #make(): Promise<void> {
    await this.#host.work('Debriefs are being read', async (library, room, job) => {
      this.#unread = await room.makeMissingFacts(library, room.watchBy(job));
      this.#lacking = room.approachesWithoutFacts(library);
    });
  }
}
