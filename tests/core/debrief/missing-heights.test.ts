import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { debriefLog, defineFacility } from '../../../core/analyze.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { idle } from '../log/reading.ts';

const LOG = readFileSync('samples/tidy-landing.csv', 'utf8');
const FACILITY = readFileSync('samples/petrelholm-ils-07.json', 'utf8');

async function debriefOf(text: string): Promise<Debrief> {
  const defined = defineFacility(FACILITY, 'petrelholm.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const source = { name: 'tidy-landing.csv', sha256: () => '', size: text.length, chunks: [text] };
  const debrief = await debriefLog(source, defined.value, {}, idle);
  if (!debrief.ok) throw new Error(debrief.refusal.message);
  return debrief.value;
}

/** The sample with the satellite's height left out of every so-manieth row; the altimeter's stands in all of them. */
function without(every: number, at: number): string {
  const [header, ...rows] = LOG.split('\n');
  const column = header!.split(',').indexOf('GNSS Altitude (ft MSL)');
  const holed = rows.map((row, i) => {
    const cells = row.split(',');
    if (i % every === at && cells.length > column) cells[column] = '';
    return cells.join(',');
  });
  return [header, ...holed].join('\n');
}

describe('a log with single heights missing', () => {
  it.each([0, 1, 2, 3, 4, 5, 6])(
    'is judged at its gates by the fixes around, at whichever (%i of 7)',
    async (at) => {
      const whole = await debriefOf(LOG);
      const holed = await debriefOf(without(7, at));
      const gates = ({ approaches }: Debrief) =>
        approaches[0]!.stability.map(({ gate, verdict, items }) => [
          gate,
          verdict,
          items.map(({ item, verdict: one }) => [item, one]),
        ]);
      expect(gates(holed)).toEqual(gates(whole));
      expect(debriefText(holed)).not.toContain('NaN');
      for (const { glidepathFullScale, glidepathHalfWidth } of holed.approaches[0]!.events)
        if (glidepathFullScale !== null) expect(glidepathHalfWidth).not.toBeNull();
    },
  );
});
