import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { debriefLog, defineFacility } from '../../../core/analyze.ts';
import { idle } from '../log/reading.ts';

const sample = (name: string) => readFileSync(`samples/${name}`, 'utf8');

/** 26 November 2026, found by fuzzing: "lost the localizer to the right at NaN ft". */
it('says by another height where a needle was lost, when the altimeter was not recorded just there', async () => {
  const defined = defineFacility(sample('petrelholm-ils-07.json'), 'f.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const lines = sample('went-around.csv').split('\n');
  const blank = (line: string, i: number) =>
    i > 0 && i % 2 === 0 ? line.replace(/^((?:[^,]*,){3})[^,]*/, '$1') : line;
  const text = lines.map(blank).join('\n');
  const source = { name: 'a.csv', sha256: () => '0'.repeat(64), size: text.length, chunks: [text] };
  const debrief = await debriefLog(source, defined.value, {}, idle);
  if (!debrief.ok) throw new Error(debrief.refusal.message);
  const [approach] = debrief.value.approaches;
  expect(approach!.summary).toMatch(/^Lost the glidepath high at [\d,]+ ft/);
  expect(approach!.summary).not.toContain('NaN');
});
