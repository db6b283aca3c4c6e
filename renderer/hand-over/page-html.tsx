import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import base from '../base.css?raw';
import styles from './hand-over.css?raw';
import { plainColours } from './plain-colours.ts';

/** No script runs and nothing is asked of anybody, and a browser is told so before it reads on. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/**
 * A page to hand over: one file for any browser, without a script and without a network. Of the same content it is the
 * same to the last byte.
 */
export function pageHtml(title: string, ownStyles: string, body: ReactNode): string {
  const css = plainColours([base, ownStyles, styles].join('\n'));
  const page = renderToStaticMarkup(
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta httpEquiv="Content-Security-Policy" content={POLICY} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="generator" content={`Halfdot ${ENGINE_VERSION}`} />
        <title>{title}</title>
        <style>{css}</style>
      </head>
      <body className="hand-over">{body}</body>
    </html>,
  );
  return `<!doctype html>\n${page.replace(/^<!doctype html>/i, '')}\n`;
}
