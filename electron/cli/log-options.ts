import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import {
  ALTITUDE_KINDS,
  QUANTITIES,
  TIME_ROLES,
  type AltitudeKind,
  type ColumnRole,
  type LogSettings,
} from '../../core/log/log.ts';
import { startFrom } from '../../core/log/start-text.ts';
import { UNIT_NAMES, unitInWords } from '../../core/log/stated-units.ts';
import { HECTOPASCALS_PER_INCH_OF_MERCURY } from '../../core/units/units.ts';
import { RECEIVER_KINDS, type ReceiverKind } from '../../core/track/receiver.ts';
import type { Arguments, Option } from './command.ts';
import { numberOf } from './number-of.ts';

const DATE_ORDERS = ['ymd', 'dmy', 'mdy'] as const;
const ROLES: readonly string[] = [...QUANTITIES, ...TIME_ROLES];

/** What a user may say about a log where the file does not: for every command that reads one. */
export const LOG_OPTIONS: Readonly<Record<string, Option>> = {
  'date-order': { value: 'the order of dates, ymd, dmy or mdy', oneOf: DATE_ORDERS },
  'time-zone': { value: 'the zone of local times, as a zone name or +02:00' },
  start: { value: 'the start of a log that counts seconds, as 2026-05-01T09:00:00Z' },
  'altitude-kind': {
    value:
      'what an altitude of no named kind is: geometric (above sea level by satellite), ellipsoid (above the ' +
      'ellipsoid), indicated (altimeter set) or pressure (altimeter at 1013.25)',
    oneOf: ALTITUDE_KINDS,
  },
  qnh: { value: 'the altimeter setting of the flight, in hPa or inches of mercury' },
  temperature: { value: 'the temperature at the aerodrome, in °C' },
  receiver: {
    value: 'what the positions come from: augmented, plain or phone',
    oneOf: RECEIVER_KINDS,
  },
  column: {
    value: 'a column and what it holds, as "Header=altitudeGeometricFt" or "Header=none"',
    repeatable: true,
  },
  unit: {
    value: 'the unit that a column is in, whatever its header says, as "Header=m" or "Header=km/h"',
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
  const units = unitsOf(options['unit'] ?? []);
  if (!units.ok) return units;
  const start = options['start']?.[0];
  const startS = start === undefined ? null : startFrom(start);
  if (start !== undefined && startS === null)
    return refused('arguments', `--start ${start} is no time.`, {
      tip: 'Write it as 2026-05-01T09:00:00Z; without a zone it is UTC.',
    });
  const setting = settingHpa(options['qnh']?.[0]);
  if (!setting.ok) return setting;
  const temperature = numberOf('temperature', options['temperature']?.[0], TEMPERATURE_C);
  if (!temperature.ok) return temperature;
  const zone = options['time-zone']?.[0];
  const order = options['date-order']?.[0];
  const receiver = options['receiver']?.[0];
  const kind = options['altitude-kind']?.[0];
  return usable({
    columns,
    ...(options['unit'] && { units: units.value }),
    ...(order && { dateOrder: order as (typeof DATE_ORDERS)[number] }),
    ...(kind && { altitudeKind: kind as AltitudeKind }),
    ...(zone && { timeZone: zone }),
    ...(startS !== null && { startS }),
    ...(setting.value !== null && { altimeterSettingHpa: setting.value }),
    ...(receiver && { receiver: receiver as ReceiverKind }),
    ...(temperature.value !== null && { temperatureC: temperature.value }),
  });
}

/** Units by header, whatever the spelling; whether a column can be in its unit is the reader's to say. */
function unitsOf(texts: readonly string[]): Outcome<Record<string, string>> {
  const units: [string, string][] = [];
  for (const text of texts) {
    const at = text.lastIndexOf('=');
    const unit = unitInWords(text.slice(at + 1));
    if (at < 1 || unit === undefined)
      return refused('arguments', `--unit "${text}" names no column and its unit.`, {
        tip: `It is written "Header=unit"; a unit is ${UNIT_NAMES.join(', ')}.`,
      });
    units.push([text.slice(0, at), unit.name]);
  }
  return usable(Object.fromEntries(units));
}

/** Below this a setting is in inches of mercury. */
const INCHES_BELOW = 40;
const SETTING_HPA = { min: 950, max: 1060 };
const SETTING_INHG = { min: 28, max: 31.3 };
export const TEMPERATURE_C = { min: -60, max: 60 };

function settingHpa(text: string | undefined): Outcome<number | null> {
  const inInches = Number(text) < INCHES_BELOW;
  const setting = numberOf('qnh', text, inInches ? SETTING_INHG : SETTING_HPA);
  if (!setting.ok || setting.value === null || !inInches) return setting;
  return usable(setting.value * HECTOPASCALS_PER_INCH_OF_MERCURY);
}
