import { renderToStaticMarkup } from 'react-dom/server';
import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import base from '../base.css?raw';
import sheetStyles from '../sheet/sheet.css?raw';
import { HandOverBody } from './hand-over-body.tsx';
import styles from './hand-over.css?raw';
import type { HandOver } from './hand-over.ts';
import type { Dots } from '../../core/sheet/sheet.ts';
import { plainColours } from './plain-colours.ts';

/** No script runs and nothing is asked of anybody, and a browser is told so before it reads on. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/**
 * The page to hand over: one file for any browser, without a script and without a network. Of the same debriefs it is
 * the same to the last byte.
 */
export function handOverHtml(handOvers: readonly HandOver[], dots: Dots): string {
  const css = plainColours([base, sheetStyles, styles].join('\n'));
  const page = renderToStaticMarkup(
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta httpEquiv="Content-Security-Policy" content={POLICY} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="generator" content={`Halfdot ${ENGINE_VERSION}`} />
        <title>{titleOf(handOvers)}</title>
        <style>{css}</style>
      </head>
      <body className="hand-over">
        <HandOverBody handOvers={handOvers} dots={dots} />
      </body>
    </html>,
  );
  return `<!doctype html>\n${page.replace(/^<!doctype html>/i, '')}\n`;
}

function titleOf(handOvers: readonly HandOver[]): string {
  const [first] = handOvers;
  if (handOvers.length !== 1 || !first) return `Debriefs of ${handOvers.length} logs`;
  const { log, facility } = first.debrief;
  return `Debrief of ${log.file} at ${facility.name}`;
}
