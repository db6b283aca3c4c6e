import type { Random } from '../flight/random.ts';
import * as localizer from './localizer-mistakes.ts';
import * as low from './low-mistakes.ts';
import * as path from './path-mistakes.ts';
import { among, type Mistaken } from './practice-flight.ts';

/** A mistake, the part of the flight that it changes, and what else is true of a flight with it. */
export interface Mistake {
  readonly change: Mistaken;
  readonly part: 'join' | 'above' | 'path' | 'final' | 'low' | 'end';
  readonly entails: readonly string[];
}

const mistake = (change: Mistaken, part: Mistake['part'], entails: readonly string[] = []): Mistake => ({
  change,
  part,
  entails,
});

/** Pilots who make exactly one mistake each, by the finding that it should be answered with. */
export const MISTAKES: Readonly<Record<string, Mistake>> = {
  'unstable-and-continued': mistake(low.unstableAndContinued, 'low', ['rate-not-held']),
  // Who ducks lands short.
  'ducked-below-path': mistake(low.ducked, 'low', ['short-landing']),
  'continued-unseen': mistake(low.continuedUnseen, 'end'),
  // Who sinks on slowly comes above the path, and begins to climb late.
  'missed-sank': mistake(low.missedSank, 'end', ['missed-late', 'levelled-near-minimums']),
  'missed-late': mistake(low.missedLate, 'low'),
  'missed-wandered': mistake(low.missedWandered, 'end'),
  'levelled-near-minimums': mistake(low.levelled, 'low'),
  // Who dives carries the speed along.
  'from-above': mistake(path.fromAbove, 'above', ['fast-at-gate']),
  // Who levels below the path to meet it once more has to begin once more.
  'descended-early': mistake(path.descendedEarly, 'path', ['descended-late']),
  'descended-late': mistake(path.descendedLate, 'path'),
  'hunting-glidepath': mistake(path.huntingGlidepath, 'final'),
  'chased-glidepath': mistake(path.chasedGlidepath, 'path', ['rate-not-held']),
  // Nobody comes back up who was not low.
  'speed-decaying': mistake(path.speedDecaying, 'path', ['rate-not-held']),
  'rate-not-held': mistake(path.rateNotHeld, 'path'),
  'late-on-localizer': mistake(localizer.lateOnLocalizer, 'join'),
  // Every swing of it is a cut too large.
  'hunting-localizer': mistake(localizer.huntingLocalizer, 'final', ['corrections-too-large']),
  drifting: mistake(localizer.drifting, 'final'),
  'corrections-too-few': mistake(localizer.correctionsTooFew, 'final'),
  'corrections-too-late': mistake(localizer.correctionsTooLate, 'final'),
  'corrections-too-large': mistake(localizer.correctionsTooLarge, 'final'),
  'fast-at-gate': mistake(path.fastAtGate, 'final'),
  'short-landing': mistake(low.shortLanding, 'end'),
  'long-landing': mistake(low.longLanding, 'end'),
};

/** Out of limits through a rate too small, and away in time: what is good about it has to be said. */
export const WENT_AROUND_IN_TIME: Mistake = mistake(low.wentAroundInTime, 'low', ['rate-not-held']);

/** Two mistakes that leave one another be: of parts that do not undo one another, and with one ending. */
export function twoMistakes(random: Random): readonly [first: string, second: string] {
  for (;;) {
    const [first, second] = [among(random, Object.keys(MISTAKES)), among(random, Object.keys(MISTAKES))];
    if (goTogether(MISTAKES[first]!.part, MISTAKES[second]!.part)) return [first, second];
  }
}

/** What may follow what: there has to be time for both, and the second may not take the place of the first. */
const FOLLOWED_BY: Readonly<Record<Mistake['part'], readonly Mistake['part'][]>> = {
  join: ['path', 'final', 'low', 'end'],
  above: ['low', 'end'],
  path: ['low', 'end'],
  final: ['end'],
  low: [],
  end: [],
};

function goTogether(first: Mistake['part'], second: Mistake['part']): boolean {
  return FOLLOWED_BY[first].includes(second);
}
