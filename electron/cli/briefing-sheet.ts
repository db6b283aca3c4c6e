import type { DefinedFacility } from '../../core/analyze.ts';
import type { BriefingAsked } from '../../core/briefing/briefing.ts';
import { briefingOf } from '../../core/briefing/briefing-of.ts';
import { briefingText } from '../../core/briefing/briefing-text.ts';
import { agreedDecisionAltitude } from '../../core/briefing/decision-altitude.ts';
import type { Paper } from '../../core/briefing/papers.ts';
import { decimalYear } from '../../core/earth/magnetic.ts';
import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import { DEFAULT_STANDARD } from '../../core/standard/standards.ts';
import { briefingHtml } from '../../renderer/briefing/briefing-html.tsx';
import { isDay } from '../library/day.ts';
import type { Arguments } from './command.ts';
import { TEMPERATURE_C } from './log-options.ts';
import { numberOf } from './number-of.ts';
import { ALTITUDE_FT, SPEED_KT, windOf } from './stated-options.ts';

/** The sheet of a facility as a text of the format that is asked for. */
export function briefingSheet(defined: DefinedFacility, args: Arguments): Outcome<string> {
  const asked = askedOf(defined, args);
  if (!asked.ok) return asked;
  const { options } = args;
  // The magnetic model wants a year, and a sheet is of today.
  const briefing = briefingOf(defined, asked.value, decimalYear(Date.now() / 1000));
  if (!briefing.ok) return briefing;
  const format = options['format']?.[0];
  if (format === 'json') return usable(`${JSON.stringify(briefing.value, null, 2)}\n`);
  const paper = (options['paper']?.[0] ?? 'a5') as Paper;
  return usable(format === 'html' ? briefingHtml(briefing.value, paper) : briefingText(briefing.value));
}

function askedOf({ geometry }: DefinedFacility, { options }: Arguments): Outcome<BriefingAsked> {
  const text = (name: string) => options[name]?.[0] ?? null;
  const numbers: Record<string, number | null> = {};
  for (const [name, range] of NUMBERS) {
    const number = numberOf(name, options[name]?.[0], range);
    if (!number.ok) return number;
    numbers[name] = number.value;
  }
  const wind = windOf(options['wind']?.[0]);
  if (!wind.ok) return wind;
  const decision = agreedDecisionAltitude(
    numbers['decision-altitude']!,
    numbers['decision-altitude-again']!,
    geometry,
  );
  if (!decision.ok) return decision;
  const enteredOn = text('entered-on');
  if (enteredOn !== null && !isDay(enteredOn))
    return refused('arguments', `--entered-on ${enteredOn} is no day.`, { tip: 'Write it as 2026-05-01.' });
  return usable({
    groundspeedKt: numbers['groundspeed']!,
    airspeedKt: numbers['airspeed']!,
    wind: wind.value,
    temperatureC: numbers['temperature']!,
    decisionAltitudeFt: decision.value,
    gateDatum: DEFAULT_STANDARD.gates.datum,
    dots: text('dots') === '5' ? 5 : 2,
    objective: text('objective'),
    goals: [],
    enteredBy: text('entered-by'),
    enteredOn,
  });
}

const NUMBERS = [
  ['groundspeed', SPEED_KT],
  ['airspeed', SPEED_KT],
  ['temperature', TEMPERATURE_C],
  ['decision-altitude', ALTITUDE_FT],
  ['decision-altitude-again', ALTITUDE_FT],
] as const;
