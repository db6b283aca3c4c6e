import type { Overview } from '../../electron/bridge/library-calls.ts';
import type { Session } from '../state/session.ts';
import { Choice } from './fields.tsx';

interface Props {
  readonly students: Overview['students'];
  readonly session: Session;
}

/** Opens a student's record; nothing where there are no students. */
export function OpenStudent({ students, session }: Props) {
  if (students.length === 0) return null;
  const open = (studentId: string) => session.store.dispatch({ do: 'student', studentId });
  return (
    <Choice words="Open a student" value="" choose={(id) => id !== '' && open(id)}>
      <option value="">choose …</option>
      {students.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </Choice>
  );
}
