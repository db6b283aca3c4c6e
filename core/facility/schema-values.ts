import * as z from 'zod/mini';
import { group, number, outside, wrongType } from '../json/schema-values.ts';

/** The kinds of values that only a facility file has. */
function longitude() {
  const bounds = { error: outside('a longitude', 'lies from -180 to below 180') };
  return z
    .number({ error: wrongType('a longitude', 'a number') })
    .check(z.gte(-180, bounds), z.lt(180, bounds));
}

/** Feet above mean sea level: from the shore of the lowest lake to above the highest airfield. */
export function elevation() {
  return number('an elevation', -1500, 16000, 'ft');
}

export function bearing(what: string) {
  return number(what, 0, 360);
}

export function place(what: string) {
  return group(what, { ...position(), elevationFt: elevation() });
}

export function placeOfUnknownHeight(what: string) {
  return group(what, { ...position(), elevationFt: z.optional(elevation()) });
}

function position() {
  return { latDeg: number('a latitude', -90, 90), lonDeg: longitude() };
}
