import { USUAL_ANTENNA_FT } from '../../core/approach/flown.ts';
import type { Judging } from '../../core/debrief/compose-debrief.ts';
import type { Heights } from '../../core/debrief/heights.ts';
import { usable, type Outcome } from '../../core/issue/issue.ts';
import { SHIPPED } from '../../core/standard/standards.ts';
import type { Arguments, Option } from './command.ts';
import { numberOf } from './number-of.ts';
import { readStandard } from './read-standard.ts';
import { STATED_OPTIONS, statedOf } from './stated-options.ts';

/** What a debrief is held to, and what was stated: for every command that makes one. */
export const JUDGING_OPTIONS: Readonly<Record<string, Option>> = {
  standard: { value: `${SHIPPED.map(({ id }) => id).join(', ')}, or a file of your own` },
  ...STATED_OPTIONS,
  heights: {
    value:
      'as-logged, or from-rollout to take off what the roll after landing shows them to be high by ' +
      '(of itself with a phone only)',
    oneOf: ['as-logged', 'from-rollout'],
  },
  'antenna-height': {
    value: `the height of the receiver's antenna above the ground, in feet; ${USUAL_ANTENNA_FT} when not said`,
  },
};

/** Higher than on any aircraft. */
const ANTENNA_FT = { min: 0, max: 40 };

/** What approaches are held to and what was stated of them, as the options say it. */
export function judgingOf(args: Arguments): Outcome<Judging> {
  const { options } = args;
  const heights = options['heights']?.[0] as Heights | undefined;
  const standard = readStandard(options['standard']?.[0]);
  if (!standard.ok) return standard;
  const stated = statedOf(args);
  if (!stated.ok) return stated;
  const antenna = numberOf('antenna-height', options['antenna-height']?.[0], ANTENNA_FT);
  if (!antenna.ok) return antenna;
  return usable({
    standard: standard.value,
    stated: stated.value,
    ...(heights && { heights }),
    ...(antenna.value !== null && { antennaHeightFt: antenna.value }),
  });
}
