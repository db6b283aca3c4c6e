import type { Kept } from '../../electron/bridge/kept.ts';
import type { Bringing } from './app-state.ts';

/** What became of a log that was brought in, by its path from the folder that was chosen. */
export type Brought = Kept & { readonly name: string };

export const NOTHING_BROUGHT: Bringing = {
  total: 0,
  done: 0,
  kept: 0,
  approaches: 0,
  known: 0,
  added: [],
  withNobody: [],
  cautions: [],
  cautioned: 0,
  refused: [],
  state: 'going',
};

/** What was brought in so far, with one log more. */
export function withOneMore(before: Bringing, log: Brought): Bringing {
  const { name } = log;
  const after = { ...before, done: before.done + 1 };
  if (log.became === 'refused') return { ...after, refused: [...before.refused, `${name}: ${log.why}`] };
  const { warnings, added, student, nobodyBecause } = log;
  const cautions = {
    cautions: [...before.cautions, ...warnings.map((words) => `${name}: ${words}`)],
    cautioned: before.cautioned + (warnings.length > 0 ? 1 : 0),
  };
  if (log.became === 'known') return { ...after, ...cautions, known: before.known + 1 };
  const isNew = added !== null && !before.added.includes(added);
  const nobody = nobodyBecause === null ? name : `${name}: ${nobodyBecause}`;
  return {
    ...after,
    ...cautions,
    kept: before.kept + 1,
    approaches: before.approaches + log.approaches,
    added: isNew ? [...before.added, added] : before.added,
    withNobody: student === null ? [...before.withNobody, nobody] : before.withNobody,
  };
}
