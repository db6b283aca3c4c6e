import { FLOWN_WORDS } from './flown-words.ts';
import { isCounted, isUnitDoubted, type ApproachFacts } from './approach-facts.ts';
import type { LeftOut } from './progress.ts';
import { BY_DRAFT, UNIT_DOUBTED } from './not-counted-words.ts';
import { inOrder, Moments } from './same-approach.ts';

export interface Comparable {
  /** In the order flown. */
  readonly approaches: readonly ApproachFacts[];
  readonly leftOut: readonly LeftOut[];
}

/**
 * The most approaches that can be put side by side: one standard, word for word, one version of the engine, and flown
 * the same way as far as anybody said; what was flown coupled only where there is nothing else, since it tells of the
 * autopilot. Of groups as large the one that was flown last. All others are counted, and so is what was not judged, or
 * only by a guess.
 */
export function comparable(all: readonly ApproachFacts[]): Comparable {
  const judged = all.filter(isCounted).sort(inOrder);
  const drafts = all.filter(({ kind, isByDraft }) => kind === 'approach' && isByDraft);
  const doubted = all.filter(isUnitDoubted);
  const passes = all.length - judged.length - drafts.length - doubted.length;
  const groups = groupsOf(judged).sort(byHandAndLargestFirst);
  const [largest, ...others] = groups;
  const approaches = largest?.approaches ?? [];
  return {
    approaches,
    leftOut: [
      ...others.map((group) => otherGroup(group, largest!)),
      ...notJudged('by-draft', drafts, BY_DRAFT, largest),
      ...notJudged('unit-doubted', doubted, UNIT_DOUBTED, largest),
      ...said(
        'same-approach',
        groups.reduce((sum, { repeated }) => sum + repeated, 0),
        SAME,
      ),
      ...said('not-an-approach', passes, PASSES),
    ],
  };
}

const SAME = 'debriefed a second time: the same moments of the same log, which count once.';
const PASSES = 'not judged: passes along the localizer, or finals joined late.';

function said(why: LeftOut['why'], count: number, what: string): LeftOut[] {
  return count === 0 ? [] : [{ why, count, later: 0, sentence: `${count} ${what}` }];
}

interface Group {
  readonly approaches: readonly ApproachFacts[];
  readonly moments: Moments;
  /** Debriefs more of the same flown approaches. */
  readonly repeated: number;
}

function groupsOf(judged: readonly ApproachFacts[]): Group[] {
  const groups = new Map<string, { approaches: ApproachFacts[]; moments: Moments; repeated: number }>();
  for (const approach of judged) {
    const { standard, standardKey, engineVersion, flown } = approach;
    const key = JSON.stringify([standard.id, standardKey, engineVersion, flown]);
    const group = groups.get(key) ?? { approaches: [], moments: new Moments(), repeated: 0 };
    groups.set(key, group);
    // Of two the one that begins first.
    if (group.moments.has(approach)) {
      group.repeated++;
      continue;
    }
    group.approaches.push(approach);
    group.moments.add(approach);
  }
  return [...groups.values()];
}

function byHandAndLargestFirst(a: Group, b: Group): number {
  const isCoupled = ({ approaches }: Group) => Number(approaches[0]!.flown === 'coupled');
  return isCoupled(a) - isCoupled(b) || largestFirst(a, b);
}

function largestFirst(a: Group, b: Group): number {
  return b.approaches.length - a.approaches.length || inOrder(b.approaches.at(-1)!, a.approaches.at(-1)!);
}

/** What sets another group apart, and how much of it is told anyway. */
function otherGroup({ approaches }: Group, largest: Group): LeftOut {
  const [one, here] = [approaches[0]!, largest.approaches[0]!];
  const isOtherEngine = one.engineVersion !== here.engineVersion;
  const apart = [
    ...(one.standard.id === here.standard.id ? [] : [`judged by ${one.standard.title}`]),
    ...(one.standard.id === here.standard.id && one.standardKey !== here.standardKey
      ? ['judged by another version of the same standard']
      : []),
    ...(isOtherEngine ? [`debriefed by version ${one.engineVersion} of the program`] : []),
    ...(one.flown === here.flown ? [] : [FLOWN_WORDS[one.flown ?? 'not-stated']]),
  ].join(', ');
  const tip = isOtherEngine ? ' `halfdot recompute` makes the debriefs of older versions anew.' : '';
  return {
    why: 'not-comparable',
    count: approaches.length,
    later: laterThan(largest, approaches),
    sentence: `${approaches.length} ${apart}.${alsoIn(largest, approaches)}${tip}`,
  };
}

/** What is known of too little to be held to anything. */
function notJudged(
  why: LeftOut['why'],
  approaches: readonly ApproachFacts[],
  what: string,
  largest: Group | undefined,
): LeftOut[] {
  const count = approaches.length;
  if (count === 0) return [];
  const [also, later] = largest ? [alsoIn(largest, approaches), laterThan(largest, approaches)] : ['', 0];
  return [{ why, count, later, sentence: `${count} ${what}${also}` }];
}

function alsoIn({ moments }: Group, approaches: readonly ApproachFacts[]): string {
  const also = approaches.filter((approach) => moments.has(approach)).length;
  return also === 0 ? '' : ` ${also} of them counted above in another debrief.`;
}

function laterThan({ approaches: here }: Group, approaches: readonly ApproachFacts[]): number {
  const last = here.at(-1)!;
  return approaches.filter((approach) => inOrder(approach, last) > 0).length;
}
