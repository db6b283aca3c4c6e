import { usable } from '../issue/issue.ts';
import type { Issue, Outcome } from '../issue/issue.ts';
import { kindIssues } from './altitude-kind.ts';
import { countOf } from './count-of.ts';
import { finishLog } from './finish-log.ts';
import { gpxColumns, gpxElements, needleColumns, statedElements, unitsByElement } from './gpx-elements.ts';
import type { GpxElement } from './gpx-elements.ts';
import { GpxFixes } from './gpx-fixes.ts';
import { GuardedXml } from './guarded-xml.ts';
import type { XmlStop } from './guarded-xml.ts';
import type { LogRefusalCode } from './issue-codes.ts';
import { logIssue, logRefused } from './log-issue.ts';
import type { LogReader } from './log-reader.ts';
import type { Log, LogSettings, LogSource } from './log.ts';
import { isHeight } from './quantity-rules.ts';
import { RowFaults } from './row-faults.ts';
import { unfitUnit, unusedUnits } from './stated-units.ts';
import type { TextStream } from './text-stream.ts';

/** GPX 1.0 and 1.1; and XML of any other kind, to say what it is. */
export const gpxReader: LogReader = { kind: 'gpx', recognises: (head) => /^\s*</.test(head), read: readGpx };

async function readGpx(text: TextStream, source: LogSource, settings: LogSettings): Promise<Outcome<Log>> {
  const elements = gpxElements(settings);
  const unfit = unfitUnit(source.name, statedElements(elements));
  if (unfit !== null) return unfit;
  const faults = new RowFaults();
  const fixes = new GpxFixes(elements, faults, text.expected(countOf(text.head, '<trkpt')));
  const xml = new GuardedXml(fixes);
  for await (const block of text.blocks()) {
    xml.write(block);
    if (xml.stop !== null || isOther(fixes)) break;
  }
  xml.end();
  if (isOther(fixes)) return wrongRoot(source.name, fixes.root);
  if (xml.stop !== null && xml.stop.kind !== 'not-well-formed') return forbidden(source.name, xml.stop);
  return conclude({ elements, faults, fixes, stop: xml.stop }, source, settings);
}

interface Desk {
  readonly elements: readonly GpxElement[];
  readonly faults: RowFaults;
  readonly fixes: GpxFixes;
  readonly stop: XmlStop | null;
}

function conclude(
  { elements, faults, fixes, stop }: Desk,
  source: LogSource,
  settings: LogSettings,
): Outcome<Log> {
  const { position, table } = fixes;
  for (const reader of fixes.readers) reader.report(faults);
  faults.add('longitude-wrapped', position.wrappedLine, position.wrapped);
  // A time without an offset is UTC: GPX 1.1 schema, element time (topografix.com/GPX/1/1/gpx.xsd; from memory).
  const times = fixes.times.resolve(undefined, undefined, true, null);
  const finished = table.finish(times.timeS);
  faults.add('row-without-time', finished.lost.firstLine, finished.lost.count);
  const issues = [...faults.issues(), ...times.issues];
  if (stop !== null) issues.push(brokenOff(source.name, stop, finished.timeS.length));
  if (finished.timeS.length === 0) return noPoints(source.name, fixes, stop, issues);
  const { values } = finished;
  if (!Object.keys(values).some((quantity) => isHeight(quantity))) return noAltitude(source.name, issues);
  const ele = elements.find(({ names }) => names.includes('ele'));
  if (ele !== undefined && values[ele.quantity] !== undefined && !ele.saidByUser) issues.push(ELE_ASSUMED);
  const said = elements.filter(({ saidByUser }) => saidByUser).map(({ quantity }) => quantity);
  issues.push(...kindIssues(settings, said, values));
  const about = {
    name: source.name,
    sha256: source.sha256(),
    kind: 'gpx',
    recognised: 'GPX',
    timeReference: 'utc',
    utcOffsetS: times.utcOffsetS,
    rowsSeen: fixes.pointsSeen,
  } as const;
  const columns = gpxColumns(elements, fixes.met, values);
  const inUnit = columns.flatMap(({ header, unitRead }) => (unitRead === null ? [] : header));
  issues.push(...unusedUnits(unitsByElement(settings), new Set(inUnit)));
  return usable(finishLog(about, finished, needleColumns(elements, columns), columns, issues));
}

function isOther(fixes: GpxFixes): boolean {
  return fixes.root !== '' && fixes.root !== 'gpx';
}

const ELE_ASSUMED = logIssue(
  'gpx-ele-assumed-msl',
  'GPX does not say whether "ele" is height above sea level or above the ellipsoid: taken as above sea level.',
  {
    tip: 'If the recorder writes another kind, such as height above the ellipsoid, state it.',
  },
);

function wrongRoot(name: string, root: string): Outcome<never> {
  return logRefused(
    'not-a-track-log',
    `${name} is XML of another kind (its outermost element is "${root.slice(0, 40)}"), no GPX.`,
    {
      tip: 'Export the flight as GPX or as CSV.',
    },
  );
}

const FORBIDDEN: Readonly<Record<string, readonly [code: LogRefusalCode, what: string]>> = {
  doctype: ['xml-doctype', 'has a document type declaration'],
  'too-deep': ['xml-too-deep', 'is nested more than 32 levels deep'],
  'text-too-long': ['xml-text-too-long', 'holds a text longer than 64 kB'],
};

function forbidden(name: string, stop: XmlStop): Outcome<never> {
  const [code, what] = FORBIDDEN[stop.kind]!;
  return logRefused(
    code,
    `${name} ${what} at line ${stop.line}, column ${stop.column}: no track log has that, and it is not read.`,
    {
      firstLine: stop.line,
      tip: 'Export the flight again.',
    },
  );
}

function brokenOff(name: string, stop: XmlStop, fixes: number): Issue {
  const place = `line ${stop.line}, column ${stop.column}`;
  return logIssue(
    'xml-not-well-formed',
    `${name} is damaged at ${place} (${stop.message}): only the ${fixes} fixes before it are used.`,
    {
      firstLine: stop.line,
      tip: 'Export or copy the log again.',
    },
  );
}

function noPoints(
  name: string,
  fixes: GpxFixes,
  stop: XmlStop | null,
  issues: readonly Issue[],
): Outcome<never> {
  if (stop !== null) {
    const message = `${name} is damaged at line ${stop.line}, column ${stop.column} (${stop.message}), before the first fix.`;
    return logRefused(
      'xml-damaged-at-start',
      message,
      { firstLine: stop.line, tip: 'Export or copy the log again.' },
      issues,
    );
  }
  const main = issues.toSorted((a, b) => b.count - a.count)[0];
  if (main !== undefined) {
    const message = `${name}: none of the ${fixes.pointsSeen} track points can be used. ${main.message}`;
    return logRefused('no-usable-rows', message, { firstLine: main.firstLine }, issues);
  }
  const instead =
    fixes.otherPoints > 0 ? `only ${fixes.otherPoints} points of routes or waypoints` : 'no track points';
  return logRefused('no-rows', `${name} holds ${instead}: a route is not a flown track.`, {
    tip: 'Export the recorded track.',
  });
}

function noAltitude(name: string, issues: readonly Issue[]): Outcome<never> {
  return logRefused(
    'no-altitude',
    `${name}: no track point has an altitude (element "ele").`,
    { tip: 'Export the track with altitudes.' },
    issues,
  );
}
