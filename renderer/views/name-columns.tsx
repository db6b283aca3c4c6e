import { useState } from 'react';
import { Button } from 'react-aria-components';
import { QUANTITIES, type ColumnRole } from '../../core/log/log.ts';
import { isHeight } from '../../core/log/quantity-rules.ts';
import { ROLE_WORDS } from '../../core/report/quantity-words.ts';
import type { Flight, NotRead } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { Choice } from './fields.tsx';

interface Props {
  readonly flight: Flight;
  readonly session: Session;
  readonly issue: NotRead;
}

/** What a log that was refused lacks, each with what it can be given as; the first is the usual one. */
const MISSING: Readonly<Record<string, readonly (readonly ColumnRole[])[]>> = {
  'no-position': [['latDeg'], ['lonDeg']],
  'no-time': [['dateTime', 'timeOfDay', 'epoch', 'elapsed'], ['date']],
  'no-altitude': [QUANTITIES.filter(isHeight)],
};

/** Which column holds what was not found, where the names alone did not tell; nothing where none can help. */
export function NameColumns({ flight, session, issue: { code = '', columns = [] } }: Props) {
  const [said, setSaid] = useState<Readonly<Record<number, Said>>>({});
  const missing = MISSING[code] ?? [];
  if (missing.length === 0 || columns.length === 0) return null;
  const roles = Object.fromEntries(Object.values(said).map(({ header, role }) => [header, role]));
  const read = () => session.mapColumns(flight.id, { columns: { ...flight.settings.columns, ...roles } });
  return (
    <form className="name-columns" aria-label="Columns" onSubmit={(event) => event.preventDefault()}>
      {missing.map((offered, i) => (
        <OneColumn
          key={i}
          offered={offered}
          columns={columns}
          say={(one) => {
            const { [i]: _, ...others } = said;
            setSaid(one === null ? others : { ...others, [i]: one });
          }}
        />
      ))}
      <Button
        className="button primary"
        isDisabled={Object.keys(roles).length === 0}
        onPress={() => void read()}
      >
        Read it so
      </Button>
    </form>
  );
}

interface Said {
  readonly header: string;
  readonly role: ColumnRole;
}

interface OneProps {
  readonly offered: readonly ColumnRole[];
  readonly columns: readonly string[];
  readonly say: (said: Said | null) => void;
}

function OneColumn({ offered, columns, say }: OneProps) {
  const [role, setRole] = useState(offered[0]!);
  const [header, setHeader] = useState('');
  const tell = (nextRole: ColumnRole, nextHeader: string) => {
    setRole(nextRole);
    setHeader(nextHeader);
    say(nextHeader === '' ? null : { header: nextHeader, role: nextRole });
  };
  return (
    <div className="row">
      {offered.length === 1 ? null : (
        <Choice words="What it is" value={role} choose={(chosen) => tell(chosen as ColumnRole, header)}>
          {offered.map((one) => (
            <option key={one} value={one}>
              {ROLE_WORDS[one]}
            </option>
          ))}
        </Choice>
      )}
      <Choice
        words={`Column of the ${offered.length === 1 ? ROLE_WORDS[role] : 'values'}`}
        value={header}
        choose={(chosen) => tell(role, chosen)}
      >
        <option value="">choose one</option>
        {[...new Set(columns)].filter(Boolean).map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </Choice>
    </div>
  );
}
