import { useId, useRef, type ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { LessonPage, Overview } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';
import { lessonPath } from '../../state/unsaid.ts';
import { useUnsaid } from '../use-unsaid.ts';
import { LONGEST } from './longest.ts';
import { useOnce } from './use-once.ts';
import { PersonField } from './person-field.tsx';

interface Props {
  readonly page: LessonPage;
  readonly overview: Overview;
  readonly session: Session;
}

/** What was said of the lesson; a note stays as it was written. */
export function LessonNotes({ page, overview, session }: Props) {
  const { lesson, notes } = page;
  const path = `${lessonPath(lesson)}/note`;
  // Not below the note: who writes one may write the next.
  const [author, setAuthor] = useUnsaid(session, `${lessonPath(lesson)}/author`, lesson.instructor ?? '');
  const add = (text: string) =>
    session.library.change('addNote', {
      lessonId: lesson.id,
      debriefId: null,
      aboutUtc: null,
      author: author.trim() || null,
      text,
    });
  return (
    <section>
      <h2>Notes</h2>
      <ul className="plain">
        {notes.map(({ id, text, author, written_utc }) => (
          <li key={id} className="note">
            {text}
            <span className="aside beside">
              {author ?? 'no author named'}, {written_utc.slice(0, 10)}
            </span>
          </li>
        ))}
      </ul>
      <WriteForm words="Write a note" button="Keep the note" write={add} session={session} path={path}>
        <PersonField
          words="Written by"
          value={author}
          role="instructor"
          overview={overview}
          change={setAuthor}
        />
      </WriteForm>
    </section>
  );
}

interface WriteProps {
  readonly words: string;
  readonly button: string;
  /** Null where it could not be kept, which has been told. */
  readonly write: (text: string) => Promise<unknown>;
  readonly session: Session;
  /** What is written in it goes by this. */
  readonly path: string;
  /** What else is said about it. */
  readonly children?: ReactNode;
}

/** A text that is kept by a button; what could not be kept stays to be kept again. */
export function WriteForm({ words, button, write, session, path, children }: WriteProps) {
  const id = useId();
  const [text, setText] = useUnsaid(session, path, '');
  const box = useRef<HTMLTextAreaElement>(null);
  const { isBusy, once } = useOnce();
  const keep = async () => {
    if ((await write(text.trim())) === null) return;
    session.store.unsaid.forget(path);
    // The button is off until something is written again.
    box.current?.focus();
  };
  return (
    <div className="field write">
      <label htmlFor={id}>{words}</label>
      <textarea
        ref={box}
        id={id}
        rows={2}
        value={text}
        maxLength={LONGEST.words}
        readOnly={isBusy}
        onChange={({ target }) => setText(target.value)}
      />
      {children}
      <Button className="button" isDisabled={isBusy || text.trim() === ''} onPress={() => once(keep)}>
        {button}
      </Button>
    </div>
  );
}
