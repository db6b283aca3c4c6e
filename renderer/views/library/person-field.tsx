import type { Overview } from '../../../electron/bridge/library-calls.ts';
import { DraftField } from '../draft-field.tsx';
import { LONGEST } from './longest.ts';

interface Props {
  readonly words: string;
  readonly role: 'student' | 'instructor';
  readonly overview: Overview;
  readonly value: string;
  readonly change: (name: string) => void;
  readonly wrong?: string | null;
  readonly enter?: () => void;
  readonly isFirst?: boolean;
}

/** The name of somebody: of those who are in the library, or of one who is added. */
export function PersonField({ role, overview, wrong = null, enter = () => {}, ...field }: Props) {
  const names = role === 'student' ? overview.students.map(({ name }) => name) : overview.instructors;
  return <DraftField {...field} choices={names} maxLength={LONGEST.name} wrong={wrong} enter={enter} />;
}
