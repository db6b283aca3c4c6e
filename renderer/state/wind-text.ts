import type { Stated } from '../../core/standard/stated.ts';

/** As fast as any wind that an approach is flown in; the command takes the same. */
const MOST_KT = 100;
const WIND = /^(\d{1,3})\s*\/\s*(\d{1,3}(?:\.\d+)?)$/;

/** What is wrong with a wind as it is typed; null where nothing is. */
export function windProblem(text: string): string | null {
  return windFrom(text) ? null : `Write it as 250/18: degrees true up to 360, and knots up to ${MOST_KT}.`;
}

/** The wind of "250/18"; null of anything else. */
export function windFrom(text: string): Stated['wind'] {
  const [, from, speed] = WIND.exec(text) ?? [];
  if (from === undefined || Number(from) > 360 || Number(speed) > MOST_KT) return null;
  return { fromTrueDeg: Number(from), speedKt: Number(speed) };
}

export function windWords(wind: Stated['wind']): string {
  return wind === null ? '' : `${String(wind.fromTrueDeg).padStart(3, '0')}/${wind.speedKt}`;
}
