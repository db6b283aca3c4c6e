import { resample, swingsOf } from '../../approach/swings.ts';
import type { Polyline } from '../../numeric/polyline.ts';
import { needleColumn, onNeedles, over, type Asked, type Needle } from './asked.ts';
import { finalOf } from '../../standard/case.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { seconds } from './say.ts';
import { whole } from '../../units/whole.ts';

const THRESHOLDS = {
  turns: threshold(4, 'turns of the needle', 'four a minute: one correction is not seen out before the next'),
  within: threshold(60, 's', 'long enough to be a habit, not a gust'),
  swing: threshold(
    0.25,
    'of full scale from turn to turn',
    'more than what counts as a turn (0.15): near the ground a tidy needle shows up to three of those a minute as a phone has it (measured)',
  ),
};

function rule(needle: Needle, practise: string): FindingRule {
  const control = needle === 'localizer' ? 'heading' : 'rate';
  return {
    id: `hunting-${needle}`,
    kind: 'fault',
    title: `Hunted the ${needle}`,
    thresholds: THRESHOLDS,
    stoodOff: null,
    byHand: true,
    coveredBy: [],
    find: (asked) => find(asked, needle),
    text: ({ turns, lastsS, sweepFullScale }) =>
      `In ${seconds(lastsS!)} the ${needle} needle changed direction ${whole(turns!)} times, by about ${sweepFullScale!.toFixed(1)} of full scale each time. ` +
      `You corrected again before the last correction had worked: set one ${control}, wait, and then judge it.`,
    practise,
  };
}

export const HUNTING_GLIDEPATH: FindingRule = rule(
  'glidepath',
  'Fly a descent by vertical speed with the needle covered, and look every ten seconds: one change of at most 100 ft/min at each ' +
    'look, then leave it alone.',
);

export const HUNTING_LOCALIZER: FindingRule = rule(
  'localizer',
  'Fly final by headings with the needle covered, and look every ten seconds: one change of at most 5 degrees at each look, and ' +
    'hold it until the next.',
);

function find(asked: Asked, needle: Needle): Found | null {
  const final = finalOf(asked.sitting);
  const span = onNeedles(asked.sitting);
  if (final === null || span === null) return null;
  const turns = over(asked, needleColumn(asked, needle), final).flatMap(turnsOf);
  const [count, within] = [THRESHOLDS.turns.value, THRESHOLDS.within.value];
  const first = turns.findIndex(
    (turn, i) => turns[i + count - 1] !== undefined && turns[i + count - 1]!.s - turn.s <= within,
  );
  if (first === -1) return null;
  let last = first + count - 1;
  while (last + 1 < turns.length && turns[last + 1]!.s - turns[last + 2 - count]!.s <= within) last++;
  const hunt = turns.slice(first, last + 1);
  const [startS, endS] = [hunt[0]!.s, hunt.at(-1)!.s];
  const sweep = hunt.reduce((sum, { size }) => sum + size, 0) / hunt.length;
  return { startS, endS, evidence: { turns: hunt.length, lastsS: endS - startS, sweepFullScale: sweep } };
}

/** The turning points of a needle, with how far it went on to the next. */
function turnsOf(part: Polyline): { s: number; size: number }[] {
  const swings = swingsOf(resample(part, 1), THRESHOLDS.swing.value);
  return swings.slice(1).map(({ startS, from, to }) => ({ s: startS, size: Math.abs(to - from) }));
}
