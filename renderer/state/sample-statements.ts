import type { LogSettings } from '../../core/log/log.ts';
import type { Conditions, RunwaySeen, Stated } from '../../core/standard/stated.ts';
import type { Sample } from './app-state.ts';

/** What the people of a sample state, which its catalogue has as words of the command. */
export function statedOfSample({ stated }: Sample): Partial<Stated> {
  const number = (name: string) => (stated[name] === undefined ? null : Number(stated[name]));
  return {
    targetAirspeedKt: number('target-airspeed'),
    vrefKt: number('vref'),
    ...(stated['runway'] && { visualReferenceAtMinimums: stated['runway'] as RunwaySeen }),
    ...(stated['conditions'] && { conditions: stated['conditions'] as Conditions }),
    vectoredInsideFix: stated['vectored-inside-fix'] === 'yes',
  };
}

export function settingsOfSample({ stated }: Sample): LogSettings {
  const receiver = stated['receiver'] as LogSettings['receiver'];
  return receiver ? { receiver } : {};
}

export function standardOfSample({ stated }: Sample): string {
  return stated['standard'] ?? 'instrument-rating';
}
