import { geodesicBetween, type Position } from '../earth/geodesic.ts';
import { placeOnAxis } from '../facility/runway-axis.ts';
import { FEET_PER_METRE, wrap180 } from '../units/units.ts';
import { whole } from '../units/whole.ts';
import type { AlongAndAcross, Drafted } from './drafted.ts';
import { leafName } from '../facility/leaf-words.ts';
import { leavesOf, type Leaf } from './leaves.ts';
import { directionDeg, positionIn, unitOf } from './places.ts';
import { halfStepOf, valueWords } from './value-words.ts';

/** Where two sources say what cannot both be. */
export interface Difference {
  /** What is chosen by: the path of the value, or of the place. */
  readonly path: string;
  /** "The threshold lies 34 ft farther down the runway by the official record than by the open dataset." */
  readonly sentence: string;
}

/** What the two sources are called in sentences. */
export interface SourceNames {
  readonly one: string;
  readonly other: string;
}

export const SOURCES: SourceNames = { one: 'the first source', other: 'the second' };
/** Of a position published to a hundredth of a second of arc, which is a foot (from memory). */
const USUAL_OFF_FT = 1;
/** What it is called, a source chooses for itself: two names are no contradiction. */
const LABEL = 'name';
/** Rounding that double precision leaves behind. */
const ROUNDING = 1e-9;
const WINDS = [
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
] as const;

/**
 * Where both sources say something and differ beyond what they may be off: values by the steps that they are published
 * in, or as far as a draft says of itself; positions along and across the runway where its direction is known.
 */
export function differencesOf(one: Drafted, other: Drafted, names: SourceNames = SOURCES): Difference[] {
  const [ones, others] = [leavesOf(one), leavesOf(other)];
  const units = [...new Set(ones.map(({ path }) => unitOf(path)))];
  return units.flatMap((unit) => {
    if (unit === LABEL) return [];
    const sentence = positionIn(ones, unit)
      ? positionSentence({ one, other, names }, unit, positionIn(ones, unit)!, positionIn(others, unit))
      : valueSentence({ one, other, names }, unit, valueIn(ones, unit), valueIn(others, unit));
    return sentence === null ? [] : [{ path: unit, sentence }];
  });
}

function valueIn(leaves: readonly Leaf[], path: string): string | number | null {
  return leaves.find((leaf) => leaf.path === path)?.value ?? null;
}

interface Both {
  readonly one: Drafted;
  readonly other: Drafted;
  readonly names: SourceNames;
}

function valueSentence(
  { one, other, names }: Both,
  path: string,
  first: string | number | null,
  second: string | number | null,
): string | null {
  if (first === null || second === null) return null;
  const off = ({ mayBeOff }: Drafted) => {
    const said = mayBeOff?.[path];
    return typeof said === 'number' ? said : halfStepOf(path);
  };
  if (isAlike(path, first, second, off(one) + off(other))) return null;
  const words = [valueWords(path, first), valueWords(path, second)];
  return `The ${leafName(path)} is ${words[0]!} by ${names.one} and ${words[1]!} by ${names.other}.`;
}

function isAlike(path: string, first: string | number, second: string | number, allowed: number): boolean {
  if (typeof first === 'number' && typeof second === 'number') {
    const isDirection = /(?:Bearing|course\w+)Deg$/.test(path) && !path.endsWith('courseWidthDeg');
    const apart = isDirection ? wrap180(first - second) : first - second;
    return Math.abs(apart) <= allowed + ROUNDING;
  }
  return plain(String(first)) === plain(String(second));
}

/** Capitals and spaces, and the 0 before a runway's number, are no difference. */
function plain(text: string): string {
  return text
    .trim()
    .toUpperCase()
    .replaceAll(/\s+/g, ' ')
    .replace(/^0(?=\d)/, '');
}

function positionSentence(
  { one, other, names }: Both,
  place: string,
  first: Position,
  second: Position | null,
): string | null {
  if (second === null) return null;
  const bearingDeg = directionDeg([one, other]);
  const allowed = sumOf(offOf(one, place), offOf(other, place));
  const farther =
    bearingDeg === null
      ? byCompass(first, second, Math.max(allowed.alongFt, allowed.acrossFt))
      : byRunway(first, second, bearingDeg, allowed);
  if (farther === null) return null;
  return `The ${leafName(place)} lies ${farther} by ${names.one} than by ${names.other}.`;
}

function offOf({ mayBeOff }: Drafted, place: string): AlongAndAcross {
  const off = mayBeOff?.[place] ?? USUAL_OFF_FT;
  return typeof off === 'number' ? { alongFt: off, acrossFt: off } : off;
}

function sumOf(one: AlongAndAcross, other: AlongAndAcross): AlongAndAcross {
  return { alongFt: one.alongFt + other.alongFt, acrossFt: one.acrossFt + other.acrossFt };
}

function byRunway(
  first: Position,
  second: Position,
  bearingDeg: number,
  allowed: AlongAndAcross,
): string | null {
  const { alongFt, rightFt } = placeOnAxis({ threshold: second, trueBearingDeg: bearingDeg }, first);
  const parts: string[] = [];
  if (Math.abs(alongFt) > allowed.alongFt)
    parts.push(
      `${whole(Math.abs(alongFt))} ft farther ${alongFt > 0 ? 'down the runway' : 'back along the runway'}`,
    );
  if (Math.abs(rightFt) > allowed.acrossFt)
    parts.push(`${whole(Math.abs(rightFt))} ft farther to the ${rightFt > 0 ? 'right' : 'left'}`);
  return parts.length === 0 ? null : parts.join(' and ');
}

function byCompass(first: Position, second: Position, allowedFt: number): string | null {
  const line = geodesicBetween(second, first);
  const feet = line.distanceM * FEET_PER_METRE;
  if (feet <= allowedFt) return null;
  return `${whole(feet)} ft farther ${WINDS[Math.round(line.startBearingDeg / 45) % WINDS.length]!}`;
}
