import { USUAL_ANTENNA_FT } from '../../core/approach/flown.ts';
import type { Heights } from '../../core/debrief/heights.ts';
import type { LogSettings } from '../../core/log/log.ts';
import { startFrom } from '../../core/log/start-text.ts';
import { zoneOffset } from '../../core/log/time-zone.ts';
import { isBySatellite } from '../../core/track/position-error.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import { lastDebriefed } from '../state/app-state.ts';
import type { Flight } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { startProblem, startWords } from '../state/start-text.ts';
import { Choice, NumberBox, TextBox } from './fields.tsx';

interface Props {
  readonly flight: Flight;
  readonly session: Session;
  readonly inspection: Inspection;
}

/** What a file leaves open: it is read anew with what is said here. */
export function LogSettingsForm({ flight, session, inspection }: Props) {
  const { settings } = flight;
  const say = (change: Partial<LogSettings>) => {
    const said = Object.entries({ ...settings, ...change }).filter(([, value]) => value !== undefined);
    void session.setSettings(flight.id, Object.fromEntries(said));
  };
  return (
    <fieldset className="log-settings">
      <legend>What the file may leave open</legend>
      <Choice
        words="Order of its dates"
        value={settings.dateOrder ?? ''}
        choose={(order) => say(left('dateOrder', order as LogSettings['dateOrder'] | ''))}
      >
        <option value="">as it seems</option>
        <option value="ymd">year, month, day</option>
        <option value="dmy">day, month, year</option>
        <option value="mdy">month, day, year</option>
      </Choice>
      <TextBox
        words="Zone of its local times, as +02:00 or by name"
        value={settings.timeZone ?? ''}
        problem={zoneProblem}
        say={(zone) => say(left('timeZone', zone))}
      />
      {inspection.timeReference === 'elapsed' || settings.startS !== undefined ? (
        <TextBox
          words="Start of the log, UTC, as 2026-05-01 09:00"
          value={startWords(settings.startS)}
          problem={startProblem}
          say={(text) => say(left('startS', startFrom(text)))}
        />
      ) : null}
      <NumberBox
        words="Altimeter setting, hPa"
        value={settings.altimeterSettingHpa ?? null}
        min={950}
        max={1060}
        say={(hpa) => say(left('altimeterSettingHpa', hpa))}
      />
      <NumberBox
        words="Temperature at the aerodrome, °C"
        value={settings.temperatureC ?? null}
        min={-60}
        max={60}
        say={(celsius) => say(left('temperatureC', celsius))}
      />
      <RolloutSettings flight={flight} session={session} />
    </fieldset>
  );
}

/** Higher than on any aircraft; the command takes the same. */
const ANTENNA_FT = { min: 0, max: 40 };

/** Asked only where a roll after a landing shows what the heights are off by, or did when it was said. */
function RolloutSettings({ flight, session }: Pick<Props, 'flight' | 'session'>) {
  const { id, heights, antennaHeightFt } = flight;
  const isSaid = heights !== null || antennaHeightFt !== null;
  if (!isSaid && !hasRoll(flight)) return null;
  return (
    <>
      <Choice
        words="Heights of the log"
        value={heights ?? ''}
        choose={(said) => void session.sayHeights(id, { heights: said === '' ? null : (said as Heights) })}
      >
        <option value="">corrected for a phone only</option>
        <option value="as-logged">as logged</option>
        <option value="from-rollout">corrected by the landing roll</option>
      </Choice>
      <NumberBox
        words={`Antenna above the ground, ft (${USUAL_ANTENNA_FT} if not said)`}
        value={antennaHeightFt}
        {...ANTENNA_FT}
        say={(feet) => void session.sayHeights(id, { antennaHeightFt: feet })}
      />
    </>
  );
}

/** Heights by an altimeter are never corrected by a roll, and where none was recorded nothing can be. */
function hasRoll({ judged }: Flight): boolean {
  const debrief = lastDebriefed(judged)?.debrief;
  if (!debrief || !isBySatellite({ altitudeSource: debrief.log.altitudeReference })) return false;
  return debrief.approaches.some(({ measures }) => (measures.rollout?.heightBiasFt ?? null) !== null);
}

function zoneProblem(zone: string): string | null {
  return zoneOffset(zone) === null ? 'Write an offset, as +02:00, or the name of a zone.' : null;
}

/** A setting, or the word that it is left open again. */
function left<K extends keyof LogSettings>(key: K, value: LogSettings[K] | '' | null): Partial<LogSettings> {
  return { [key]: value === '' || value === null ? undefined : value } as Partial<LogSettings>;
}
