import { useId, useState } from 'react';
import { Button } from 'react-aria-components';
import type { LessonPage, Overview } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';

interface Props {
  readonly page: LessonPage;
  readonly overview: Overview;
  readonly session: Session;
}

/** What was said of the lesson; a note stays as it was written. */
export function LessonNotes({ page, session }: Props) {
  const { lesson, notes } = page;
  const add = (text: string) =>
    session.library.change('addNote', {
      lessonId: lesson.id,
      debriefId: null,
      aboutUtc: null,
      author: lesson.instructor,
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
      <WriteForm words="Write a note" button="Keep the note" write={add} />
    </section>
  );
}

interface WriteProps {
  readonly words: string;
  readonly button: string;
  /** Null where it could not be kept, which has been told. */
  readonly write: (text: string) => Promise<unknown>;
}

/** A text that is kept by a button; what could not be kept stays to be kept again. */
export function WriteForm({ words, button, write }: WriteProps) {
  const id = useId();
  const [text, setText] = useState('');
  const keep = async () => {
    if ((await write(text.trim())) !== null) setText('');
  };
  return (
    <div className="field write">
      <label htmlFor={id}>{words}</label>
      <textarea id={id} rows={2} value={text} onChange={({ target }) => setText(target.value)} />
      <Button className="button" isDisabled={text.trim() === ''} onPress={() => void keep()}>
        {button}
      </Button>
    </div>
  );
}
