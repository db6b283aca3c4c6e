import type { LogColumn } from '../log/log.ts';
import type { Inspection } from './inspection.ts';
import { dayAndClock, duration } from './plain-words.ts';
import { listed } from '../units/listed.ts';
import { whole } from '../units/whole.ts';
import { ROLE_WORDS } from './quantity-words.ts';
import type { LogUse } from './log-uses.ts';
import { indentedLines, textLines } from './text-rows.ts';
import { unitReadWords } from './unit-words.ts';

const PAGE_WIDTH = 100;
const SEVERITY_WORDS = { refusal: 'Cannot be used', warning: 'Warning', caution: 'Caution', note: 'Note' };

/** What `inspect` prints: the log in sentences, then its columns, then what is worth knowing. */
export function inspectionText(found: Inspection): string {
  const blocks = [
    paragraph(`${found.file} is a track log: ${found.recognised}.`),
    paragraph(`${fixesSentence(found)} ${rateSentence(found)} ${altitudeSentence(found)}`),
    usedColumns(found.columns),
    unusedColumns(found.columns),
    usesTable(found.uses),
    worthKnowing(found),
    paragraph(derivedSentence(found)),
  ];
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function paragraph(text: string): readonly string[] {
  return textLines(text, PAGE_WIDTH);
}

function fixesSentence({ fixes, startUtc, endUtc, durationS, timeReference }: Inspection): string {
  const start = dayAndClock(startUtc);
  const end = dayAndClock(endUtc);
  const span = `${whole(fixes)} fixes over ${duration(durationS)}`;
  if (timeReference === 'elapsed' && start.day === '1 January 1970')
    return `It holds ${span}, counted from its own start.`;
  const zone = timeReference === 'local' ? 'as written' : 'UTC';
  const until = end.day === start.day ? end.clock : `${end.clock} on ${end.day}`;
  return `It holds ${span}: ${start.day}, ${start.clock} to ${until} ${zone}.`;
}

function rateSentence({ medianIntervalS, gaps }: Inspection): string {
  const perSecond = 1 / medianIntervalS;
  const rate =
    perSecond >= 1.5
      ? `${Number(perSecond.toPrecision(2))} fixes a second`
      : medianIntervalS < 1.5 && medianIntervalS > 0.75
        ? 'One fix a second'
        : `A fix every ${Number(medianIntervalS.toPrecision(2))} s`;
  const gapSeconds = gaps.reduce((sum, { seconds }) => sum + seconds, 0);
  if (gaps.length === 0) return `${rate}, without a gap.`;
  return `${rate}, with ${gaps.length === 1 ? 'one gap' : `${gaps.length} gaps`} of ${duration(gapSeconds)} in all.`;
}

function altitudeSentence({ altitudeFt, altitudeReference }: Inspection): string {
  const source = {
    geometric: 'GNSS height above sea level',
    'ellipsoid-less-geoid': 'GNSS height above the ellipsoid, less the geoid (EGM96)',
    unnamed: 'an altitude of no stated kind, taken as above sea level',
    indicated: 'indicated altitude',
    pressure: 'pressure altitude',
    transponder: 'transponder altitude',
  }[altitudeReference];
  return `Heights from ${whole(altitudeFt.lowest)} to ${whole(altitudeFt.highest)} ft; the glidepath is computed from ${source}.`;
}

function usedColumns(columns: readonly LogColumn[]): readonly string[] {
  const rows = columns.flatMap((column) =>
    column.role === null
      ? []
      : [[ROLE_WORDS[column.role], `"${column.header}"`, unitReadWords(column), sureness(column.confidence)]],
  );
  const widths = [0, 1, 2].map((at) => Math.max(...rows.map((row) => row[at]!.length), 0));
  const lines = rows.map((row) =>
    `  ${row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd(),
  );
  return ['Taken for', ...lines];
}

/** What a debrief can make of the log; what the log does not allow stands last. */
function usesTable(uses: readonly LogUse[]): readonly string[] {
  const there = uses.filter(({ from }) => from !== null);
  const missing = uses.filter(({ from }) => from === null);
  return [
    'What a debrief takes from it (errors hold 95 %)',
    ...there.flatMap(({ quantity, from, usedFor, ...error }) =>
      indentedLines(`  ${quantity.padEnd(23)}`, `from ${from!}${errorWords(error)}; for ${usedFor}`),
    ),
    ...(missing.length === 0
      ? []
      : paragraph(
          `Not in this log, and so not told: ${missing.map(({ quantity }) => quantity).join(', ')}.`,
        )),
  ];
}

function errorWords({
  halfWidth,
  unit,
  errorFrom,
}: Pick<LogUse, 'halfWidth' | 'unit' | 'errorFrom'>): string {
  if (halfWidth === null) return errorFrom === null ? '' : ` (${errorFrom})`;
  const size = halfWidth < 1 ? halfWidth.toFixed(1) : whole(Math.ceil(halfWidth));
  return `, ± ${size} ${unit!} (${errorFrom!})`;
}

/** How sure a recognition is, in words; the thresholds are ours. */
function sureness(confidence: number): string {
  if (confidence >= 0.9) return 'sure';
  return confidence >= 0.6 ? 'likely' : 'a guess: please check';
}

function unusedColumns(columns: readonly LogColumn[]): readonly string[] {
  const unused = columns.filter(({ role }) => role === null).map(({ header }) => `"${header}"`);
  if (unused.length === 0) return [];
  const shown = unused.slice(0, 12).join(', ');
  return paragraph(`Not used: ${shown}${unused.length > 12 ? ` and ${unused.length - 12} more` : ''}.`);
}

function worthKnowing({ issues }: Inspection): readonly string[] {
  if (issues.length === 0) return ['Nothing in it looks wrong.'];
  return [
    'Worth knowing',
    ...issues.flatMap(({ severity, message, tip, firstLine }) => {
      const place = firstLine === null || message.includes('line ') ? '' : ` (First on line ${firstLine}.)`;
      const text = `${SEVERITY_WORDS[severity]}: ${message}${place}${tip ? ` ${tip}` : ''}`;
      return textLines(text, PAGE_WIDTH - 4).map((line, i) => (i === 0 ? `  ${line}` : `    ${line}`));
    }),
  ];
}

function derivedSentence({ derived }: Inspection): string {
  const worked = [
    derived.groundspeedKt ? 'groundspeed' : null,
    'ground track',
    derived.verticalSpeedFpm ? 'vertical speed' : null,
  ].filter((word) => word !== null);
  return `Worked out from the positions and heights, not read: ${listed(worked)}.`;
}
