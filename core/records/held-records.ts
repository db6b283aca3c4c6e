import { ownText } from '../log/own-text.ts';
import { decodeAirport } from './airport-record.ts';
import type { Decoded } from './columns.ts';
import { decodeFix, fixKindOfSection, isFix, type FixKind } from './fix-record.ts';
import { decodeLeg, isGlideslopeRoute } from './leg-record.ts';
import { decodeLocalizer, hasGlideslope } from './localizer-record.ts';
import type { RecordKind } from './record-kind.ts';
import type { AirportLines } from './records-index.ts';
import { decodeRunway } from './runway-record.ts';

/** The largest country's file holds about a third of this; a file of any size must not fill the memory. */
const HELD_MAX = 400_000;
/** All that is read of a fix stands before this column. */
const FIX_COLUMNS = 74;

interface HeldAirport {
  airport: string | null;
  readonly localizers: string[];
  readonly runways: string[];
  readonly legs: string[];
  /** Terminal waypoints and NDBs, by kind, ident and region. */
  readonly fixes: Map<string, string>;
}

/**
 * What a pass through a file has to hold on to. The order of the records is not relied on: which waypoints are needed is
 * known when all legs are, and these may stand anywhere.
 */
export class HeldRecords {
  /** Records that were left out because there were too many. */
  tooMany = 0;
  #count = 0;
  readonly #airports = new Map<string, HeldAirport>();
  /** Enroute waypoints and navaids, by kind, ident and region. */
  readonly #fixes = new Map<string, string>();

  /** Takes a record of a kind that is needed; why it cannot be read, or null. */
  take(line: string, kind: RecordKind): string | null {
    if (isFix(kind)) return this.#takeFix(line, kind);
    if (kind === 'airport') return this.#takeRead(line, decodeAirport(line), 'airport');
    if (kind === 'runway') return this.#takeRead(line, decodeRunway(line), 'runways');
    if (kind === 'localizer') return this.#takeRead(line, decodeLocalizer(line), 'localizers');
    if (kind === 'leg' && isGlideslopeRoute(line)) return this.#takeRead(line, decodeLeg(line), 'legs');
    return null;
  }

  /** The airports that have a localizer, each with what its facilities are made of. */
  airports(): AirportLines[] {
    const found: AirportLines[] = [];
    for (const ident of [...this.#airports.keys()].toSorted(byCode)) {
      const held = this.#airports.get(ident)!;
      if (held.localizers.length > 0) found.push(this.#kept(ident, held));
    }
    return found;
  }

  #kept(ident: string, held: HeldAirport): AirportLines {
    const { airport, localizers, runways, legs } = held;
    if (!localizers.some(isIls)) return { ident, airport, localizers, runways: [], legs: [], fixes: [] };
    const named = new Set<string>();
    for (const line of legs) {
      const leg = decodeLeg(line);
      const kind = leg.ok && leg.value.fix !== null ? fixKindOfSection(leg.value.fix.section) : null;
      if (leg.ok && leg.value.fix !== null && kind !== null)
        named.add(keyOf(kind, leg.value.fix.ident, leg.value.fix.region));
    }
    // A localizer's DME is a navaid of the same ident.
    for (const line of localizers)
      named.add(keyOf('vhf-navaid', line.slice(13, 17).trim(), line.slice(10, 12)));
    const fixes = [...named].toSorted(byCode).flatMap((key) => {
      const line = held.fixes.get(key) ?? this.#fixes.get(key);
      return line === undefined ? [] : [line];
    });
    return { ident, airport, localizers, runways, legs, fixes };
  }

  #takeFix(line: string, kind: FixKind): string | null {
    const fix = decodeFix(line, kind);
    if (!fix.ok) return fix.fault;
    const { ident, region, airport } = fix.value;
    const isTerminal = kind === 'terminal-waypoint' || kind === 'terminal-ndb';
    const fixes = isTerminal ? this.#airport(airport ?? '').fixes : this.#fixes;
    const key = keyOf(kind, ident, region);
    if (!fixes.has(key) && this.#hasRoom()) fixes.set(key, held(line.slice(0, FIX_COLUMNS)));
    return null;
  }

  #takeRead(
    line: string,
    record: Decoded<{ readonly ident?: string; readonly airport?: string }>,
    into: 'airport' | 'runways' | 'localizers' | 'legs',
  ): string | null {
    if (!record.ok) return record.fault;
    if (!this.#hasRoom()) return null;
    if (into === 'airport') this.#airport(record.value.ident!).airport ??= held(line);
    else this.#airport(record.value.airport!)[into].push(held(line));
    return null;
  }

  #airport(ident: string): HeldAirport {
    let airport = this.#airports.get(ident);
    if (airport === undefined) {
      airport = { airport: null, localizers: [], runways: [], legs: [], fixes: new Map() };
      this.#airports.set(ident, airport);
    }
    return airport;
  }

  #hasRoom(): boolean {
    if (this.#count < HELD_MAX) this.#count++;
    else this.tooMany++;
    return this.tooMany === 0;
  }
}

function keyOf(kind: FixKind, ident: string, region: string): string {
  return `${kind} ${ident} ${region}`;
}

function held(line: string): string {
  return ownText(line.slice(0, 132).trimEnd());
}

function isIls(line: string): boolean {
  const localizer = decodeLocalizer(line);
  return localizer.ok && hasGlideslope(localizer.value);
}

function byCode(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
