import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import type { Output } from '../../../electron/bridge/calls.ts';
import type { Session } from '../../state/session.ts';
import { call } from '../../state/host.ts';
import { Asked } from '../asked.tsx';
import { useOnce } from './use-once.ts';

interface Props {
  readonly id: string;
  readonly overview: Overview;
  readonly session: Session;
  /** The student was deleted. */
  readonly deleted: () => void;
}

/** One student: what there is of them, and the way to delete all of it. */
export function StudentPanel({ id, overview, session, deleted }: Props) {
  const student = overview.students.find((one) => one.id === id);
  const [held, setHeld] = useState<Output<'holdings'> | null>(null);
  const { once } = useOnce();
  useEffect(() => {
    call('holdings', { studentId: id }).then(setHeld, session.library.tell);
  }, [id, session, overview]);
  if (!student || held === null) return null;
  const { name, last } = student;
  const what = `${count(held.lessons, 'lesson')}, ${count(held.logs, 'log')} and ${count(held.approaches, 'approach', 'approaches')}`;
  const copies =
    held.copies.length === 0
      ? ''
      : ` The copies beside the library go too, with everybody in them: ${held.copies.join(', ')}.`;
  const named =
    held.namedElsewhere === 0
      ? ''
      : ` ${count(held.namedElsewhere, 'note, goal or objective', 'notes, goals or objectives')} of others with this name in it stay: look through them.`;
  const remove = async () => {
    await session.library.deleteStudent(id, name);
    const left = session.store.state().library.overview?.students ?? [];
    if (!left.some((one) => one.id === id)) deleted();
  };
  return (
    <div className="row student-panel">
      <span className="aside">
        {name}: {what}
        {last === null ? '' : `, last on ${last}`}.
      </span>
      <Button className="button" onPress={() => session.store.dispatch({ do: 'student', studentId: id })}>
        Lessons of {name} together
      </Button>
      <Asked
        words={`Delete ${name}…`}
        question={`Delete ${name} with ${what}, for good?${copies}${named} Backups and exports keep what they hold, also those made here.`}
        yes="Delete for good"
        no="Cancel"
        act={() => once(remove)}
      />
    </div>
  );
}

function count(many: number, one: string, more = `${one}s`): string {
  return `${many} ${many === 1 ? one : more}`;
}
