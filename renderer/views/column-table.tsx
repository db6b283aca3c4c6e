import { QUANTITIES, TIME_ROLES, type ColumnRole, type LogColumn } from '../../core/log/log.ts';
import { unitsOffered } from '../../core/log/offered-units.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import { ROLE_WORDS } from '../../core/report/quantity-words.ts';
import { unitReadWords } from '../../core/report/unit-words.ts';
import type { Flight } from '../state/app-state.ts';
import { roleNow, unitNow, withRole, withUnit } from '../state/mapping.ts';
import type { Session } from '../state/session.ts';

interface Props {
  readonly flight: Flight;
  readonly session: Session;
  readonly inspection: Inspection;
}

const ROLES: readonly ColumnRole[] = [...QUANTITIES, ...TIME_ROLES];

/** The columns of a log: what each is taken for and which unit it is read in, both of which can be changed. */
export function ColumnTable({ flight, session, inspection }: Props) {
  return (
    <table className="columns">
      <caption>
        Columns <span className="aside">a change is remembered for logs with these headers</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">Header</th>
          <th scope="col">Unit named</th>
          <th scope="col">Taken for</th>
          <th scope="col">Read in</th>
        </tr>
      </thead>
      <tbody>
        {inspection.columns.map((column) => (
          <tr key={column.index}>
            <th scope="row">{column.header}</th>
            <td>{column.unitText ?? ''}</td>
            <td>
              <RoleChoice flight={flight} session={session} inspection={inspection} column={column} />
            </td>
            <td>
              <UnitChoice flight={flight} session={session} column={column} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function RoleChoice({ flight, session, inspection, column }: Props & { readonly column: LogColumn }) {
  const { id, settings } = flight;
  const take = (role: ColumnRole | null) =>
    void session.mapColumns(id, withRole(inspection.columns, settings, column, role));
  return (
    <select
      aria-label={`${column.header} is taken for`}
      value={roleNow(settings, column) ?? 'none'}
      onChange={({ target }) => take(ROLES.find((role) => role === target.value) ?? null)}
    >
      <option value="none">not used</option>
      {ROLES.map((role) => (
        <option key={role} value={role}>
          {ROLE_WORDS[role]}
        </option>
      ))}
    </select>
  );
}

/** Offered only where a column is read in a unit and could be in another. */
function UnitChoice({ flight, session, column }: Omit<Props, 'inspection'> & { readonly column: LogColumn }) {
  const { id, settings } = flight;
  const { role, unitRead, header } = column;
  const offered = role === null || unitRead === null ? [] : unitsOffered(role);
  if (offered.length === 0) return null;
  const said = unitNow(settings, column);
  return (
    <>
      <select
        aria-label={`Unit of ${header}`}
        value={said ?? ''}
        onChange={({ target }) =>
          void session.mapColumns(id, withUnit(settings, column, target.value === '' ? null : target.value))
        }
      >
        <option value="">as the header has it</option>
        {[...new Set([...offered, ...(said === null ? [] : [said])])].map((unit) => (
          <option key={unit} value={unit}>
            {unit}
          </option>
        ))}
      </select>
      <HowItIsKnown column={column} />
    </>
  );
}

/** Words beside a unit that was not read from the file nor said. */
function HowItIsKnown({ column }: { readonly column: LogColumn }) {
  const { unitRead, unitText } = column;
  if (unitRead === null || unitRead.from === 'header' || unitRead.from === 'user') return null;
  if (unitRead.from !== 'assumed') return <span className="aside beside">{unitReadWords(column)}</span>;
  const why = unitText === null ? 'the header names no unit' : `“${unitText}” does not settle it`;
  return (
    <span className="beside wrong">
      Assumed: {unitRead.name}. {why[0]!.toUpperCase() + why.slice(1)}.
    </span>
  );
}
