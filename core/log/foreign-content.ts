import type { Outcome } from '../issue/issue.ts';
import type { LogRefusalCode } from './issue-codes.ts';
import { logRefused } from './log-issue.ts';

const EXPORT_AGAIN = 'Export the flight as CSV or as GPX.';
const SAVE_AS_CSV = 'Open it in the spreadsheet program and save the sheet with the fixes as CSV.';

/** What files that are no track logs begin with, once decoded as text: bytes above 127 came out as Windows-1252. */
const SIGNATURES: readonly (readonly [start: RegExp, code: LogRefusalCode, what: string, tip: string])[] = [
  [
    /^(?:\u2030PNG|\ufffdPNG|\u00ff\u00d8\u00ff|GIF8|BM.{0,2}\0|II\*\0|MM\0\*|RIFF.{4}WEBP)/s,
    'file-is-picture',
    'a picture',
    EXPORT_AGAIN,
  ],
  [/^\u00d0\u00cf\u0011\u00e0/, 'file-is-spreadsheet', 'a spreadsheet workbook', SAVE_AS_CSV],
  [
    /^PK\u0003\u0004.{0,4000}(?:xl\/|\[Content_Types\]|opendocument\.spreadsheet)/s,
    'file-is-spreadsheet',
    'a spreadsheet workbook',
    SAVE_AS_CSV,
  ],
  [
    /^PK[\u0003\u0005\u0007]/,
    'file-is-archive',
    'a packed archive',
    'Unpack it and open the track log inside.',
  ],
  [
    /^\u001f[\u2039\u008b]/,
    'file-is-archive',
    'a packed archive',
    'Unpack it and open the track log inside.',
  ],
  [/^%PDF/, 'file-is-document', 'a PDF document', EXPORT_AGAIN],
  [
    /^\s*(?:<!doctype\s+html|<html)/i,
    'file-is-web-page',
    'a web page',
    'Download the track log itself, not the page that links to it.',
  ],
  [
    /^\s*\{[^]{0,200}"format"\s*:\s*"halfdot-(?:facility|standard)\//,
    'not-a-track-log',
    'a facility or a standard of this program',
    'In the app such files are brought in under Facilities and Standards; commands take them by --facility and --standard.',
  ],
  [/^\s*(?:\{\s*["}]|\[\s*[[{"\d\]])/, 'not-a-track-log', 'JSON', EXPORT_AGAIN],
  [/^SQLite format 3/, 'not-a-track-log', 'a database', EXPORT_AGAIN],
];

/** The refusal for a file that is known to be something else, or empty; null when it may be a log. */
export function foreignContent(name: string, head: string): Outcome<never> | null {
  if (/^[\s\0]*$/.test(head))
    return logRefused('file-empty', `${name} is empty.`, { tip: 'Export or copy the log again.' });
  const found = SIGNATURES.find(([start]) => start.test(head));
  if (found !== undefined) {
    const [, code, what, tip] = found;
    return logRefused(code, `${name} is ${what}, no track log.`, { tip });
  }
  if (isWideText(head)) {
    return logRefused('file-encoding', `${name} is text in UTF-16 without a mark that says so.`, {
      tip: 'Save it as UTF-8.',
    });
  }
  return null;
}

/** Every second character of UTF-16 that was decoded byte by byte is NUL. */
function isWideText(head: string): boolean {
  const start = head.slice(0, 1000);
  return start.length > 3 && (start.match(/[^\0]\0/g) ?? []).length * 2 >= start.length - 1;
}
