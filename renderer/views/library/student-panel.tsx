import { useEffect, useState } from 'react';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import type { Output } from '../../../electron/bridge/calls.ts';
import type { Session } from '../../state/session.ts';
import { call } from '../../state/host.ts';
import { Asked } from '../asked.tsx';

interface Props {
  readonly id: string;
  readonly overview: Overview;
  readonly session: Session;
}

/** One student: what there is of them, and the way to delete all of it. */
export function StudentPanel({ id, overview, session }: Props) {
  const student = overview.students.find((one) => one.id === id);
  const [held, setHeld] = useState<Output<'holdings'> | null>(null);
  useEffect(() => {
    call('holdings', { studentId: id }).then(setHeld, session.library.tell);
  }, [id, session, overview]);
  if (!student || held === null) return null;
  const what = `${count(held.lessons, 'lesson')}, ${count(held.logs, 'log')} and ${count(held.approaches, 'approach', 'approaches')}`;
  const copies =
    held.copies.length === 0
      ? ''
      : ` The copies beside the library go too, with everybody in them: ${held.copies.join(', ')}.`;
  return (
    <div className="row student-panel">
      <span className="aside">
        {student.name}: {what}
        {student.last === null ? '' : `, last on ${student.last}`}.
      </span>
      <Asked
        words={`Delete ${student.name}…`}
        question={`Delete ${student.name} with ${what}, for good?${copies} Backups and exports made elsewhere keep what they hold.`}
        yes="Delete for good"
        act={() => void session.library.deleteStudent(id, student.name)}
      />
    </div>
  );
}

function count(many: number, one: string, more = `${one}s`): string {
  return `${many} ${many === 1 ? one : more}`;
}
