import { seededRandom } from '../flight/random.ts';
import { canTell } from './can-tell.ts';
import { debriefed, filesOf, type RecordedBy } from './debriefed.ts';
import { MISTAKES, twoMistakes, WENT_AROUND_IN_TIME, type Mistake } from './mistakes.ts';
import { mistakenFlight } from './practice-flight.ts';

/** What the program said of one flight, by ids. */
export interface Answer {
  readonly name: string;
  /** What was done wrong, one or two of them; empty for a tidy flight. */
  readonly mistakes: readonly string[];
  /** In the order in which they were said; null where no approach was found. */
  readonly faults: readonly string[] | null;
  readonly praise: readonly string[];
  /** Whether a phone's data can tell it (`can-tell.ts`); null where it always can, and of what a panel recorded. */
  readonly canTell: boolean | null;
}

export type Flown = 'tidy' | 'two' | 'went-around-in-time' | (string & {});

/** The mistakes of a flight: none, two of chance, or the one that it is named for. */
function mistakesOf(flown: Flown, seed: number): readonly string[] {
  if (flown === 'tidy' || flown === 'went-around-in-time') return [];
  return flown === 'two' ? twoMistakes(seededRandom(`two/${seed}`)) : [flown];
}

function changesOf(flown: Flown, mistakes: readonly string[]): readonly Mistake[] {
  return flown === 'went-around-in-time' ? [WENT_AROUND_IN_TIME] : mistakes.map((id) => MISTAKES[id]!);
}

/** Flies one, and reads it as each of these recorded it. */
export async function answersTo(
  flown: Flown,
  seed: number,
  recordings: readonly RecordedBy[],
): Promise<Readonly<Record<RecordedBy, Answer | undefined>>> {
  const mistakes = mistakesOf(flown, seed);
  const changes = changesOf(flown, mistakes).map(({ change }) => change);
  const flight = mistakenFlight(flown, changes, seed);
  const files = filesOf(flight);
  const answers: Partial<Record<RecordedBy, Answer>> = {};
  for (const recorded of recordings) {
    const approach = (await debriefed(files[recorded], flight)).find(({ kind }) => kind === 'approach');
    const ids = (kind: string) => approach?.findings.filter((one) => one.kind === kind).map(({ id }) => id);
    answers[recorded] = {
      name: `${flight.plan.name} (${mistakes.join(' and ')})`,
      mistakes,
      faults: ids('fault') ?? null,
      praise: ids('praise') ?? [],
      canTell: recorded === 'phone' ? canTell(flown, flight) : null,
    };
  }
  return { panel: answers.panel, phone: answers.phone };
}

/** The right one first among the faults. */
export function isFirst({ mistakes, faults }: Answer): boolean {
  return faults?.[0] !== undefined && faults[0] === mistakes[0];
}

/** All of them among the three that are shown. */
export function areAmongThree({ mistakes, faults }: Answer): boolean {
  return mistakes.every((id) => faults?.slice(0, 3).includes(id));
}

/** A fault that was neither made nor comes with what was. */
export function falseFaults({ mistakes, faults }: Answer): readonly string[] {
  const right = new Set(mistakes.flatMap((id) => [id, ...MISTAKES[id]!.entails]));
  return (faults ?? []).filter((id) => !right.has(id));
}
