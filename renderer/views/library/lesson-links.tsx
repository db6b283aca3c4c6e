import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Output } from '../../../electron/bridge/calls.ts';
import { call } from '../../state/host.ts';
import type { Session } from '../../state/session.ts';

interface Props {
  /** Null: nobody yet. */
  readonly studentId: string | null;
  readonly changes: number;
  readonly session: Session;
}

/** Every lesson of a student, the newest first: one without an approach stands in no list of approaches. */
export function LessonLinks({ studentId, changes, session }: Props) {
  const [lessons, setLessons] = useState<Output<'lessons'>>([]);
  useEffect(() => {
    call('lessons', { studentId }).then(setLessons, session.library.tell);
  }, [studentId, changes, session]);
  if (lessons.length === 0) return null;
  return (
    <nav className="lesson-links" aria-label="Lessons">
      <span>Lessons:</span>
      {lessons.toReversed().map(({ id, date, approaches }) => (
        <Button
          key={id}
          className="link"
          onPress={() => session.store.dispatch({ do: 'lesson', lessonId: id })}
        >
          {approaches === 0 ? `${date} (no approach)` : date}
        </Button>
      ))}
    </nav>
  );
}
