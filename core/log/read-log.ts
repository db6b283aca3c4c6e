import type { Outcome } from '../issue/issue.ts';
import { foreignContent } from './foreign-content.ts';
import { logRefused } from './log-issue.ts';
import type { LogReader } from './log-reader.ts';
import type { Job, Log, LogSettings, LogSource } from './log.ts';
import { csvReader } from './read-csv.ts';
import { gpxReader } from './read-gpx.ts';
import { unknownUnit } from './stated-units.ts';
import { TextStream } from './text-stream.ts';
import { zoneOffset } from './time-zone.ts';

/** In the order in which they are asked; the one that takes any text is last. */
const READERS: readonly LogReader[] = [gpxReader, csvReader];

/**
 * Reads a track log of any format that is known, told by its content. Problems come back as a refusal (a file that
 * cannot be used; `cancelled` when the job was stopped) or in `Log.issues`. Between blocks of at most a million
 * characters the job is told how far it is, and asked whether to go on.
 */
export async function readLog(source: LogSource, settings: LogSettings, job: Job): Promise<Outcome<Log>> {
  const text = await TextStream.open(source, job);
  try {
    if (text.cancelled) return cancelled(source.name);
    const { timeZone } = settings;
    if (timeZone !== undefined && zoneOffset(timeZone) === null) return zoneInvalid(timeZone);
    const unknown = unknownUnit(settings);
    if (unknown !== null) return unknown;
    const outcome = await readText(text, source, settings);
    return text.cancelled ? cancelled(source.name) : outcome;
  } finally {
    await text.close();
  }
}

async function readText(text: TextStream, source: LogSource, settings: LogSettings): Promise<Outcome<Log>> {
  const foreign = foreignContent(source.name, text.head);
  if (foreign !== null) return foreign;
  const reader = READERS.find((candidate) => candidate.recognises(text.head));
  if (reader !== undefined) return reader.read(text, source, settings);
  return logRefused(
    'not-a-track-log',
    `${source.name} is no track log: it is neither a table of values nor GPX.`,
    {
      tip: 'Export the flight as CSV or as GPX.',
    },
  );
}

function cancelled(name: string): Outcome<never> {
  return logRefused('cancelled', `Reading ${name} was stopped.`);
}

function zoneInvalid(timeZone: string): Outcome<never> {
  return logRefused('time-zone-invalid', `"${timeZone}" is no time zone that is known.`, {
    tip: 'Give an offset such as +02:00, or the name of a zone such as "UTC".',
  });
}
