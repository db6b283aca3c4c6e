import { ALTITUDE_KINDS } from '../../core/log/log.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import { inspectionText } from '../../core/report/inspection-text.ts';
import type { Flight } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { ColumnTable } from './column-table.tsx';
import { LogSettingsForm } from './log-settings-form.tsx';

interface Props {
  readonly flight: Flight;
  readonly session: Session;
  readonly inspection: Inspection;
}

/** What was recognised in a log, in words, and its columns, which can be taken for something else. */
export function RecognisedView({ flight, session, inspection }: Props) {
  return (
    <details className="recognised">
      <summary>What was recognised in {inspection.file}</summary>
      <pre className="page">{inspectionText(inspection)}</pre>
      <ColumnTable flight={flight} session={session} inspection={inspection} />
      <KindOfAltitude flight={flight} session={session} inspection={inspection} />
      {/* Its fields hold what was typed: another set of statements needs other fields. */}
      <LogSettingsForm
        key={String(flight.lastTime?.isTaken)}
        flight={flight}
        session={session}
        inspection={inspection}
      />
    </details>
  );
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
