import type { Session } from '../../state/session.ts';
import { Backups, Work } from './backups.tsx';
import { useLibraryWork } from './use-library-work.ts';

/** The way back to a backup where the library itself cannot be read, or is not there; nothing where there is none. */
export function RestoreBox({ session }: { readonly session: Session }) {
  const { work, isBusy, backups, during } = useLibraryWork(session.library);
  if (backups.length === 0) return null;
  const restore = async (name: string) => {
    const words = await session.library.restore(name);
    // What is shown by then is the library, and this box is gone.
    if (words !== null) session.store.dispatch({ do: 'done', message: words });
    return null;
  };
  return (
    <section className="boxed restore-box" aria-label="Restore" aria-busy={isBusy}>
      <h2>Backups</h2>
      <p>These were made here. One of them can be made the library again.</p>
      <Backups backups={backups} isBusy={isBusy} restore={(name) => during(() => restore(name))} />
      <Work work={work} />
    </section>
  );
}
