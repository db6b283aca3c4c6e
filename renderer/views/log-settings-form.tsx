import type { LogSettings } from '../../core/log/log.ts';
import type { Flight } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { Choice, NumberBox, TextBox } from './fields.tsx';

interface Props {
  readonly flight: Flight;
  readonly session: Session;
}

/** What a file leaves open: it is read anew with what is said here. */
export function LogSettingsForm({ flight, session }: Props) {
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
        say={(zone) => say(left('timeZone', zone))}
      />
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
    </fieldset>
  );
}

/** A setting, or the word that it is left open again. */
function left<K extends keyof LogSettings>(key: K, value: LogSettings[K] | '' | null): Partial<LogSettings> {
  return { [key]: value === '' || value === null ? undefined : value } as Partial<LogSettings>;
}
