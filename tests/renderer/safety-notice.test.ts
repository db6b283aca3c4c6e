import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { sheetsOf } from '../../core/sheet/sheet-of.ts';
import { ApproachSection } from '../../renderer/hand-over/approach-section.tsx';
import { composedSample } from '../support/samples/composed-sample.ts';

/** The page to hand over, from its first sentence to its sheet. */
async function headOf(file: string): Promise<string> {
  const composed = await composedSample(file);
  const { log, approaches } = composed.debrief;
  const [approach, sheet] = [approaches[0]!, sheetsOf(composed)[0]!];
  const props = { approach, sheet, sinceLast: null, log, id: '', dots: 2 as const };
  return /<h2>.*?<figure>/s.exec(renderToStaticMarkup(createElement(ApproachSection, props)))![0];
}

it('the page to hand over says right below its sentence that a safety limit was crossed, or nothing', async () => {
  expect(await headOf('unstable-and-continued.csv')).toMatch(
    /<\/h2><p class="notice">A safety limit was crossed: full scale high on the glidepath for at least 11 s on final, without going around\.<\/p>/,
  );
  expect(await headOf('tidy-landing.csv')).not.toContain('safety limit');
});
