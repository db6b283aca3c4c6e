import type { Polyline } from '../numeric/polyline.ts';

/** A movement from one turning point to the next. */
export interface Swing {
  readonly startS: number;
  readonly endS: number;
  readonly from: number;
  readonly to: number;
}

/** The line's values every `stepS` seconds from its start, on its straight lines. */
export function resample({ timeS, value }: Polyline, stepS: number): Polyline {
  const startS = timeS[0]!;
  const endS = timeS[timeS.length - 1]!;
  // One too many at most, where rounding makes the last step end beyond the line.
  const times = new Float64Array(Math.floor((endS - startS) / stepS) + 2);
  const values = new Float64Array(times.length);
  let count = 0;
  let at = 0;
  for (let s = startS; s <= endS; s = startS + count * stepS) {
    while (at + 2 < timeS.length && timeS[at + 1]! < s) at++;
    const share = (s - timeS[at]!) / (timeS[at + 1]! - timeS[at]!);
    times[count] = s;
    values[count++] = value[at]! + share * (value[at + 1]! - value[at]!);
  }
  return { timeS: times.subarray(0, count), value: values.subarray(0, count) };
}

/**
 * The swings of a line of at least `least` from turning point to turning point: smaller wiggles within a swing do not
 * end it. The last swing counts as far as it went.
 */
export function swingsOf({ timeS, value }: Polyline, least: number): Swing[] {
  const found: Swing[] = [];
  // In a swing up `low` is its beginning and `high` as far as it came; before the first swing both are extremes.
  let low = 0;
  let high = 0;
  let direction = 0;
  for (let i = 1; i < value.length; i++) {
    if (direction <= 0 && value[i]! < value[low]!) low = i;
    if (direction >= 0 && value[i]! > value[high]!) high = i;
    const turnsUp = direction <= 0 && value[i]! - value[low]! >= least;
    const turnsDown = direction >= 0 && value[high]! - value[i]! >= least;
    if (!turnsUp && !turnsDown) continue;
    if (direction !== 0) found.push(swing(timeS, value, turnsUp ? high : low, turnsUp ? low : high));
    direction = turnsUp ? 1 : -1;
    // The new swing begins at the turning point; as far as it came is here.
    if (turnsUp) high = i;
    else low = i;
  }
  if (direction !== 0)
    found.push(swing(timeS, value, direction > 0 ? low : high, direction > 0 ? high : low));
  return found;
}

function swing(timeS: Float64Array, value: Float64Array, start: number, end: number): Swing {
  return { startS: timeS[start]!, endS: timeS[end]!, from: value[start]!, to: value[end]! };
}
