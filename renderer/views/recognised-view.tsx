import {
  ALTITUDE_KINDS,
  QUANTITIES,
  TIME_ROLES,
  type ColumnRole,
  type LogColumn,
} from '../../core/log/log.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import { inspectionText } from '../../core/report/inspection-text.ts';
import { ROLE_WORDS } from '../../core/report/quantity-words.ts';
import type { Flight } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { LogSettingsForm } from './log-settings-form.tsx';

interface Props {
  readonly flight: Flight;
  readonly session: Session;
  readonly inspection: Inspection;
}

const ROLES: readonly ColumnRole[] = [...QUANTITIES, ...TIME_ROLES];

/** What was recognised in a log, in words, and its columns, which can be taken for something else. */
export function RecognisedView({ flight, session, inspection }: Props) {
  return (
    <details className="recognised">
      <summary>What was recognised in {inspection.file}</summary>
      <pre className="page">{inspectionText(inspection)}</pre>
      <table>
        <caption>
          Columns <span className="aside">a change is remembered for logs with these headers</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Header</th>
            <th scope="col">Unit</th>
            <th scope="col">Taken for</th>
          </tr>
        </thead>
        <tbody>
          {inspection.columns.map((column) => (
            <tr key={column.index}>
              <th scope="row">{column.header}</th>
              <td>{column.unitText ?? ''}</td>
              <td>
                <select
                  aria-label={`${column.header} is taken for`}
                  value={column.role ?? 'none'}
                  onChange={({ target }) =>
                    void session.mapColumns(flight.id, mapped(inspection.columns, column, target.value))
                  }
                >
                  <option value="none">not used</option>
                  {ROLES.map((role) => (
                    <option key={role} value={role}>
                      {ROLE_WORDS[role]}
                    </option>
                  ))}
                </select>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <KindOfAltitude flight={flight} session={session} inspection={inspection} />
      <LogSettingsForm flight={flight} session={session} />
    </details>
  );
}

/** All columns as they are, but the one that was changed. */
function mapped(
  columns: readonly LogColumn[],
  changed: LogColumn,
  role: string,
): Record<string, ColumnRole | null> {
  const roles = columns.map((column) => [
    column.header,
    column.index === changed.index ? (role === 'none' ? null : (role as ColumnRole)) : column.role,
  ]);
  return Object.fromEntries(roles);
}

const KIND_WORDS = {
  geometric: 'above sea level, by satellite',
  ellipsoid: 'above the ellipsoid, by satellite',
  indicated: 'the altimeter, its setting applied',
  pressure: 'the altimeter at 1013.25 hPa',
};

/** Asked only where the log leaves it open. */
function KindOfAltitude({ flight, session, inspection }: Props) {
  const isOpen =
    inspection.altitudeReference === 'unnamed' || inspection.kind === 'gpx' || flight.settings.altitudeKind;
  if (!isOpen) return null;
  const { altitudeKind: _, ...rest } = flight.settings;
  return (
    <label className="field">
      <span>The altitude of this log is</span>
      <select
        value={flight.settings.altitudeKind ?? ''}
        onChange={({ target }) => {
          const kind = ALTITUDE_KINDS.find((known) => known === target.value);
          void session.setSettings(flight.id, kind ? { ...rest, altitudeKind: kind } : rest);
        }}
      >
        <option value="">as the log has it</option>
        {ALTITUDE_KINDS.map((kind) => (
          <option key={kind} value={kind}>
            {KIND_WORDS[kind]}
          </option>
        ))}
      </select>
    </label>
  );
}
