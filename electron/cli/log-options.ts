import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import { QUANTITIES, TIME_ROLES, type ColumnRole, type LogSettings } from '../../core/log/log.ts';
import { HECTOPASCALS_PER_INCH_OF_MERCURY } from '../../core/units/units.ts';
import type { Arguments, Option } from './command.ts';

const DATE_ORDERS = ['ymd', 'dmy', 'mdy'] as const;
const ROLES: readonly string[] = [...QUANTITIES, ...TIME_ROLES];

/** What a user may say about a log where the file does not: for every command that reads one. */
export const LOG_OPTIONS: Readonly<Record<string, Option>> = {
  'date-order': { value: 'the order of dates, ymd, dmy or mdy', oneOf: DATE_ORDERS },
  'time-zone': { value: 'the zone of local times, as a zone name or +02:00' },
  start: { value: 'the start of a log that counts seconds, as 2026-05-01T09:00:00Z' },
  qnh: { value: 'the altimeter setting of the flight, in hPa or inches of mercury' },
  temperature: { value: 'the temperature at the aerodrome, in °C' },
  column: {
    value: 'a column and what it holds, as "Header=altitudeGeometricFt" or "Header=none"',
    repeatable: true,
  },
};

/** The settings that these options make. */
export function logSettings({ options }: Arguments): Outcome<LogSettings> {
  const columns: Record<string, ColumnRole | null> = {};
  for (const text of options['column'] ?? []) {
    const at = text.lastIndexOf('=');
    const role = text.slice(at + 1);
    if (at < 1 || (role !== 'none' && !ROLES.includes(role)))
      return refused('arguments', `--column "${text}" names no column and what it holds.`, {
        tip: `It is written "Header=role"; a role is none, ${ROLES.join(', ')}.`,
      });
    columns[text.slice(0, at)] = role === 'none' ? null : (role as ColumnRole);
  }
  const start = options['start']?.[0];
  const startMs = start === undefined ? NaN : Date.parse(start);
  if (start !== undefined && Number.isNaN(startMs))
    return refused('arguments', `--start ${start} is no time.`, { tip: 'Write it as 2026-05-01T09:00:00Z.' });
  const qnh = numberIn(
    'qnh',
    options['qnh']?.[0],
    isSetting,
    'an altimeter setting: 950 to 1060 hPa, or 28 to 31.3 inches',
  );
  if (!qnh.ok) return qnh;
  const temperature = numberIn(
    'temperature',
    options['temperature']?.[0],
    isTemperature,
    'a temperature: -60 to 60 °C',
  );
  if (!temperature.ok) return temperature;
  const zone = options['time-zone']?.[0];
  const order = options['date-order']?.[0];
  return usable({
    columns,
    ...(order && { dateOrder: order as (typeof DATE_ORDERS)[number] }),
    ...(zone && { timeZone: zone }),
    ...(start && { startS: startMs / 1000 }),
    ...(qnh.value !== null && { altimeterSettingHpa: hectopascals(qnh.value) }),
    ...(temperature.value !== null && { temperatureC: temperature.value }),
  });
}

/** Above this a setting is in hPa, below in inches of mercury. */
const INCHES_BELOW = 40;
const hectopascals = (setting: number): number =>
  setting < INCHES_BELOW ? setting * HECTOPASCALS_PER_INCH_OF_MERCURY : setting;
const isSetting = (setting: number): boolean => hectopascals(setting) >= 948 && hectopascals(setting) <= 1060;
const isTemperature = (celsius: number): boolean => celsius >= -60 && celsius <= 60;

function numberIn(
  name: string,
  text: string | undefined,
  isPossible: (number: number) => boolean,
  what: string,
): Outcome<number | null> {
  if (text === undefined) return usable(null);
  const number = text.trim() === '' ? NaN : Number(text);
  if (isPossible(number)) return usable(number);
  return refused('arguments', `--${name} ${text} is not ${what}.`);
}
