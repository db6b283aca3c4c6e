import { listed } from '../units/listed.ts';
import { isCounted, type ApproachFacts, type CriterionFacts } from './approach-facts.ts';
import { inSentence } from './in-sentence.ts';
import { measureOf } from './lines.ts';
import type { ProgressUnit } from './progress.ts';
import { inOrder } from './same-approach.ts';

/** What was flown better than the time before, of one approach. */
export interface SinceLast {
  /** When the approach begins, by which its debrief names it. */
  readonly approachUtc: string;
  /** `YYYY-MM-DD` of the lesson before. */
  readonly lastDate: string;
  readonly sentence: string;
}

/**
 * A gain that is told of. Approaches of a student who does not change differ by more than 0.2 of full scale in one pair
 * of 40, by the spread that the honesty tests take (days 0.04, approaches 0.06); for speeds and shares ours.
 */
const GAIN: Readonly<Record<Exclude<ProgressUnit, 'level'>, number>> = {
  'full scale': 0.2,
  kt: 4,
  share: 0.2,
};

/** One level more comes and goes with a student who does not change (of the generated course, in two lessons of five). */
const LEVELS = 2;

/** A localizer of another width is another task: within so much its RMS can be compared (ours). */
const SAME_WIDTH_DEG = 0.25;

/** Nobody takes home more. */
const MOST = 3;

/**
 * What of an approach was better than the last that can be compared, of a day before: by the same standard, version and
 * way of flying, recorded alike, on a localizer as wide. Null where nothing was, or there is none.
 *
 * @param all of the student, in any order
 */
export function sinceLast(now: ApproachFacts, all: readonly ApproachFacts[]): SinceLast | null {
  const before = all
    .filter((one) => one.date < now.date && areComparable(one, now))
    .toSorted(inOrder)
    .at(-1);
  if (!before) return null;
  const better = [...levelBetter(before, now), ...now.criteria.flatMap((one) => betterThan(before, one))];
  if (better.length === 0) return null;
  const place = before.facility === now.facility ? '' : ` at ${before.facility}`;
  const sentence = `Against the approach of ${before.date}${place}: ${listed(better.slice(0, MOST))}. One approach against one is no trend yet.`;
  return { approachUtc: now.startUtc, lastDate: before.date, sentence };
}

/** Of one approach; null where nothing is known to be better. */
export function sinceLastSentence(
  all: readonly SinceLast[],
  { startUtc }: { readonly startUtc: string },
): string | null {
  return all.find(({ approachUtc }) => approachUtc === startUtc)?.sentence ?? null;
}

function areComparable(one: ApproachFacts, now: ApproachFacts): boolean {
  return (
    isCounted(one) &&
    isCounted(now) &&
    one.standardKey === now.standardKey &&
    one.engineVersion === now.engineVersion &&
    one.flown === now.flown &&
    one.logKind === now.logKind &&
    Math.abs(one.localizerFullScaleDeg - now.localizerFullScaleDeg) <= SAME_WIDTH_DEG
  );
}

function levelBetter({ level: then }: ApproachFacts, { level: now }: ApproachFacts): string[] {
  if (then === null || now === null || then.isOpen || now.isOpen || now.level - then.level < LEVELS)
    return [];
  return [`level ${now.level} after level ${then.level}`];
}

function betterThan(before: ApproachFacts, now: CriterionFacts): string[] {
  const then = before.criteria.find(({ id }) => id === now.id);
  if (!then) return [];
  const title = inSentence(now.title);
  const { measure, unit } = measureOf(now.id);
  if (measure === 'rms') return rmsBetter(title, unit, then.rms, now.rms);
  if (measure === 'inside-by-distance') return shareBetter(title, then.insideShare, now.insideShare);
  return then.verdict === 'not-met' && now.verdict === 'met' ? [`${title}: met, and not then`] : [];
}

function rmsBetter(title: string, unit: ProgressUnit, then: number | null, now: number | null): string[] {
  if (unit !== 'full scale' && unit !== 'kt') return [];
  if (then === null || now === null || then - now < GAIN[unit]) return [];
  const figure = (rms: number) => rms.toFixed(unit === 'kt' ? 1 : 2);
  const what = unit === 'kt' ? 'kt RMS off the target' : 'of full scale RMS';
  return [`${title} ${figure(now)} ${what} after ${figure(then)}`];
}

function shareBetter(title: string, then: number | null, now: number | null): string[] {
  if (then === null || now === null || now - then < GAIN.share) return [];
  return [`${title} within the limit for ${percent(now)} of the way after ${percent(then)}`];
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
