import { usable, type Outcome } from '../issue/issue.ts';
import { listed } from '../units/listed.ts';
import { decodeAirport, type AirportRecord } from './airport-record.ts';
import { decodeFix, fixKindOfSection, type FixRecord } from './fix-record.ts';
import type { LegRecord } from './leg-record.ts';
import { decodeLocalizer, hasGlideslope, type LocalizerRecord } from './localizer-record.ts';
import { kindOfRecord } from './record-kind.ts';
import { recordsRefused } from './records-issue.ts';
import type { AirportLines, RecordsIndex } from './records-index.ts';
import { proceduresOf, type Procedure } from './procedures.ts';
import { oppositeRunway } from './runway-names.ts';
import { decodeRunway, type RunwayRecord } from './runway-record.ts';

/** The records that one facility is made of; null where the file has none of a kind. */
export interface FacilityRecords {
  readonly airport: AirportRecord | null;
  readonly localizer: LocalizerRecord;
  readonly runway: RunwayRecord | null;
  readonly opposite: RunwayRecord | null;
  readonly procedures: readonly Procedure[];
  /** Waypoints and navaids that the legs name. */
  readonly fixes: readonly string[];
}

/**
 * The records of one localizer of an index.
 *
 * @param procedure the only one to look at; null for all that lead down the localizer
 */
export function facilityRecords(
  index: RecordsIndex,
  airportIdent: string,
  localizerIdent: string,
  procedure: string | null,
): Outcome<FacilityRecords> {
  const lines = index.airports.find(({ ident }) => ident === airportIdent);
  if (lines === undefined)
    return recordsRefused('records-airport-unknown', `The records have no localizer at ${airportIdent}.`, {
      tip: 'Airports go by their four-letter ident.',
    });
  const localizers = lines.localizers.flatMap(readLocalizer);
  const localizer = localizers.find(({ ident }) => ident === localizerIdent);
  if (localizer === undefined) {
    const there = named(localizers);
    return recordsRefused(
      'records-localizer-unknown',
      `${airportIdent} has no localizer ${localizerIdent}: its localizers are ${there}.`,
    );
  }
  if (!hasGlideslope(localizer)) {
    const message = `The localizer ${localizerIdent} at ${airportIdent} has no glideslope in the records: localizer-only approaches are not supported`;
    return recordsRefused('records-no-glideslope', `${message}.`);
  }
  return withProcedures(lines, localizer, procedure);
}

function withProcedures(
  lines: AirportLines,
  localizer: LocalizerRecord,
  procedure: string | null,
): Outcome<FacilityRecords> {
  const all = proceduresOf(lines.legs, localizer.ident);
  const procedures = procedure === null ? all : all.filter(({ ident }) => ident === procedure);
  if (procedure !== null && procedures.length === 0) {
    const there = all.length === 0 ? 'there is none' : `there is ${named(all)}`;
    return recordsRefused(
      'records-procedure-unknown',
      `No procedure ${procedure} leads down the localizer ${localizer.ident}: ${there}.`,
    );
  }
  const runways = lines.runways.flatMap(readRunway);
  const runwayOf = (name: string | null) => runways.find(({ runway }) => runway === name) ?? null;
  return usable({
    airport: readAirport(lines.airport),
    localizer,
    runway: runwayOf(localizer.runway),
    opposite: runwayOf(oppositeRunway(localizer.runway)),
    procedures,
    fixes: lines.fixes,
  });
}

/** The record of the place that a leg ends at, if it is a waypoint or a navaid that the file has. */
export function fixOfLeg(fixes: readonly string[], { fix }: LegRecord): FixRecord | null {
  const kind = fix === null ? null : fixKindOfSection(fix.section);
  if (fix === null || kind === null) return null;
  for (const line of fixes) {
    if (kindOfRecord(line) !== kind) continue;
    const record = decodeFix(line, kind);
    if (record.ok && record.value.ident === fix.ident && record.value.region === fix.region)
      return record.value;
  }
  return null;
}

/** Whether the file has a DME with the localizer's own ident. */
export function hasOwnDme({ fixes, localizer }: FacilityRecords): boolean {
  return fixes.some((line) => {
    const record = kindOfRecord(line) === 'vhf-navaid' ? decodeFix(line, 'vhf-navaid') : null;
    return record?.ok === true && record.value.ident === localizer.ident;
  });
}

/** The first of them; a sentence does not hold hundreds. */
function named(things: readonly { readonly ident: string }[]): string {
  return listed(things.slice(0, 12).map(({ ident }) => ident));
}

function readAirport(line: string | null): AirportRecord | null {
  const record = line === null ? null : decodeAirport(line);
  return record?.ok ? record.value : null;
}

function readLocalizer(line: string): LocalizerRecord[] {
  const record = decodeLocalizer(line);
  return record.ok ? [record.value] : [];
}

function readRunway(line: string): RunwayRecord[] {
  const record = decodeRunway(line);
  return record.ok ? [record.value] : [];
}
