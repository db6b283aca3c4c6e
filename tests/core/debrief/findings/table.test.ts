import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FINDING_RULES } from '../../../../core/debrief/findings/rules.ts';

const rows = readFileSync('DEVELOPERS.md', 'utf8')
  .split('\n')
  .filter((line) => line.startsWith('| `'));
const rowOf = (id: string) => rows.find((row) => row.startsWith(`| \`${id}\` `));

describe('the table of findings for developers', () => {
  it.each(FINDING_RULES.map((rule) => [rule.id, rule] as const))(
    'has %s, each threshold and its reason',
    (id, rule) => {
      const row = rowOf(id);
      expect(row).toBeDefined();
      for (const { value, unit, why } of Object.values(rule.thresholds))
        expect(row).toContain(`${value} ${unit}: ${why}`);
    },
  );
});

describe('the rules of the findings', () => {
  const ids = FINDING_RULES.map(({ id }) => id);

  it('have names of their own', () => expect(new Set(ids).size).toBe(ids.length));

  it('are covered only by rules that are asked before them', () => {
    for (const [i, { id, coveredBy }] of FINDING_RULES.entries())
      for (const other of coveredBy) expect(ids.slice(0, i), `${id} by ${other}`).toContain(other);
  });
});
