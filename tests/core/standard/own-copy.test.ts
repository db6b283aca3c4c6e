import { describe, expect, it } from 'vitest';
import { ownCopy } from '../../../core/standard/own-copy.ts';
import { parseStandard } from '../../../core/standard/parse-standard.ts';
import type { Standard } from '../../../core/standard/standard.ts';
import { INSTRUMENT_RATING } from '../../../core/standard/shipped/instrument-rating.ts';
import { SHIPPED } from '../../../core/standard/standards.ts';

function read(text: string): Standard {
  const parsed = parseStandard(text, 's.json');
  if (!parsed.ok) throw new Error(parsed.issues.map(({ message }) => message).join('\n'));
  return parsed.value;
}

/** The limits of a standard without where they were read. */
function limitsOf({ beforeFinal, final, gates, minimums }: Standard): unknown {
  const { source: _, ...atGates } = gates;
  return JSON.parse(
    JSON.stringify({ beforeFinal, final, atGates, minimums }, (key, value: unknown) =>
      ['source', 'status', 'code'].includes(key) ? undefined : value,
    ),
  );
}

describe('a copy of a shipped standard to be changed', () => {
  it.each(SHIPPED)(
    '$id is a file that can be used, with all its limits and another id and title',
    (shipped) => {
      const copy = read(ownCopy(shipped, []));
      expect(limitsOf(copy)).toEqual(limitsOf(shipped));
      expect(copy.lacks).toEqual({ ...shipped.lacks });
      expect(SHIPPED.map(({ id }) => id)).not.toContain(copy.id);
      expect(SHIPPED.map(({ title }) => title)).not.toContain(copy.title);
    },
  );

  it('changes at the gates what is changed on final', () => {
    const text = ownCopy(INSTRUMENT_RATING, []).replace(
      /("final": \{\s+"localizerFullScale": )0\.75/,
      (_, before: string) => `${before}0.1`,
    );
    const { final, gates } = read(text);
    expect([final.localizer!.upper, gates.localizer!.upper]).toEqual([0.1, 0.1]);
  });

  it('writes out gates that are not as on final', () => {
    const { gates } = INSTRUMENT_RATING;
    const odd: Standard = {
      ...INSTRUMENT_RATING,
      gates: {
        ...gates,
        localizer: { ...gates.localizer!, lower: -0.2, upper: 0.3 },
        airspeed: { ...gates.airspeed!, lower: null },
        speedBasis: 'vref',
      },
    };
    expect(limitsOf(read(ownCopy(odd, [])))).toEqual(limitsOf(odd));
  });

  it('takes no id and no title that is taken', () => {
    const taken: Standard[] = [];
    for (let i = 0; i < 3; i++) taken.push(read(ownCopy(INSTRUMENT_RATING, taken)));
    expect(new Set(taken.map(({ id }) => id)).size).toBe(3);
    expect(new Set(taken.map(({ title }) => title)).size).toBe(3);
    expect(taken[1]).toMatchObject({
      id: 'own-instrument-rating-2',
      title: 'Own 2: Instrument rating, precision approach',
    });
  });
});
