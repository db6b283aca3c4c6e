import { inOrder, Moments } from '../same-approach.ts';
import { alphabetical } from './alphabetical.ts';
import { approachesOf } from './counted.ts';
import type { JudgedByCount, SchoolLeftOut } from './school.ts';
import type { JudgedBy, SchoolApproach, SchoolFilter } from './school-input.ts';

export interface JudgedAlike {
  /** In the order flown, each flown approach once. */
  readonly approaches: readonly SchoolApproach[];
  readonly offered: readonly JudgedByCount[];
  readonly leftOut: readonly SchoolLeftOut[];
}

/**
 * What was judged by one standard, word for word, and one version of the engine, between the days of a filter: the
 * ones that it names, else those with the most approaches, and of as many those flown last. All others are counted.
 *
 * @param inOrderFlown all approaches
 */
export function judgedAlike(inOrderFlown: readonly SchoolApproach[], filter: SchoolFilter): JudgedAlike {
  const groups = groupsOf(inOrderFlown, filter);
  const flown = groups.filter(({ approaches }) => approaches.length > 0);
  const [chosen] = flown.filter(({ judgedBy }) => isAsked(judgedBy, filter)).sort(largestFirst);
  const offered = alphabetical(
    flown.map(({ judgedBy, approaches }) => ({
      ...judgedBy,
      approaches: approaches.length,
      students: new Set(approaches.map(({ studentId }) => studentId)).size,
    })),
    ({ standardTitle, engineVersion }) => `${standardTitle} ${engineVersion}`,
  );
  const others = flown.filter((group) => group !== chosen).map((group) => otherGroup(group, chosen));
  if (!chosen) return { approaches: [], offered, leftOut: others };
  const leftOut = [
    ...others,
    ...said('same-approach', chosen.repeated, SAME),
    ...said('other-days', chosen.otherDays, 'flown on other days than asked for.'),
  ];
  return { approaches: chosen.approaches, offered, leftOut };
}

interface Group {
  readonly judgedBy: JudgedBy;
  /** Between the days. */
  readonly approaches: SchoolApproach[];
  readonly moments: Moments;
  otherDays: number;
  /** Debriefs more of the same flown approaches. */
  repeated: number;
}

function groupsOf(inOrderFlown: readonly SchoolApproach[], { from, to }: SchoolFilter): Group[] {
  const groups = new Map<string, Group>();
  // Most share the object, of which no key has to be made.
  const byObject = new Map<JudgedBy, Group>();
  for (const approach of inOrderFlown) {
    const { judgedBy, date } = approach;
    const group = byObject.get(judgedBy) ?? groupOf(judgedBy, groups);
    byObject.set(judgedBy, group);
    if ((from !== null && date < from) || (to !== null && date > to)) group.otherDays++;
    else if (group.moments.has(approach)) group.repeated++;
    else {
      group.moments.add(approach);
      group.approaches.push(approach);
    }
  }
  return [...groups.values()];
}

function groupOf(judgedBy: JudgedBy, groups: Map<string, Group>): Group {
  const key = `${judgedBy.standardKey}\n${judgedBy.engineVersion}`;
  const group = groups.get(key) ?? {
    judgedBy,
    approaches: [],
    moments: new Moments(),
    otherDays: 0,
    repeated: 0,
  };
  groups.set(key, group);
  return group;
}

function isAsked(judgedBy: JudgedBy, { standardKey, engineVersion }: SchoolFilter): boolean {
  return (
    (standardKey === null || judgedBy.standardKey === standardKey) &&
    (engineVersion === null || judgedBy.engineVersion === engineVersion)
  );
}

function largestFirst(a: Group, b: Group): number {
  return b.approaches.length - a.approaches.length || inOrder(b.approaches.at(-1)!, a.approaches.at(-1)!);
}

const SAME = 'debriefed a second time: the same moments of the same log, which count once.';

/** Nothing where there are none of them. */
export function said(why: SchoolLeftOut['why'], count: number, what: string): SchoolLeftOut[] {
  return count === 0 ? [] : [{ why, count, sentence: `${approachesOf(count)} ${what}` }];
}

/** What sets another group apart, and how much of it is told anyway. */
function otherGroup({ judgedBy, approaches }: Group, chosen: Group | undefined): SchoolLeftOut {
  const here = chosen?.judgedBy;
  const isOtherEngine = judgedBy.engineVersion !== here?.engineVersion;
  const apart = [
    ...(judgedBy.standardKey === here?.standardKey ? [] : [otherStandard(judgedBy, here)]),
    ...(isOtherEngine ? [`debriefed by version ${judgedBy.engineVersion} of the program`] : []),
  ].join(', ');
  const alsoHere = chosen ? approaches.filter((approach) => chosen.moments.has(approach)).length : 0;
  const also = alsoHere === 0 ? '' : ` ${alsoHere} of them counted here in another debrief.`;
  const tip = isOtherEngine && here ? ' `halfdot recompute` makes the debriefs of older versions anew.' : '';
  const sentence = `${approachesOf(approaches.length)} ${apart}.${also}${tip}`;
  return { why: 'not-comparable', count: approaches.length, sentence };
}

function otherStandard({ standardTitle }: JudgedBy, here: JudgedBy | undefined): string {
  return standardTitle === here?.standardTitle
    ? `judged by another version of ${standardTitle}`
    : `judged by ${standardTitle}`;
}
