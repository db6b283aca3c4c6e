/** Times of a log as text, rounded to the millisecond; parts are cut from ISO 8601, so no zone can creep in. */
export function isoUtc(timeS: number, decimals: 0 | 1 | 3 = 0): string {
  const text = new Date(Math.round(timeS * 1000)).toISOString();
  return decimals === 0 ? `${text.slice(0, 19)}Z` : `${text.slice(0, 20 + decimals)}Z`;
}

export function dateText(timeS: number): string {
  return isoUtc(timeS).slice(0, 10);
}

export function timeText(timeS: number, decimals: 0 | 1 | 3 = 0): string {
  return isoUtc(timeS, decimals).slice(11, -1);
}

/** Day, month and year with points, as in German. */
export function germanDate(timeS: number): string {
  const [year, month, day] = dateText(timeS).split('-');
  return `${day}.${month}.${year}`;
}
