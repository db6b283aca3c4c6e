import {
  defineFacility,
  materialThere,
  readFlight,
  type DefinedFacility,
  type Flight,
} from '../../core/analyze.ts';
import type { Material } from '../../core/debrief/compose-debrief.ts';
import { usable, type Outcome } from '../../core/issue/issue.ts';
import type { Job, LogSettings, LogSource } from '../../core/log/log.ts';
import { TextDecoding } from '../../electron/bridge/text-decoding.ts';
import type { FacilityText, ReadLog } from './protocol.ts';
import { turn } from './turn.ts';
import { UTF8 } from './utf8.ts';

const CHUNK_BYTES = 1 << 20;

interface Kept {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
  readonly settings: LogSettings;
  /** Read, and projected on the facilities that were asked for. */
  flight: Flight | null;
  readonly materials: Map<string, Material>;
}

/** The logs that the page has open, with what was made of them, so that a regrade reads nothing again. */
export class KeptLogs {
  readonly #logs = new Map<string, Kept>();

  keep({ log, bytes, ...said }: ReadLog): void {
    this.#logs.set(log, { ...said, bytes: new Uint8Array(bytes), flight: null, materials: new Map() });
  }

  setSettings(log: string, settings: LogSettings): void {
    this.#logs.set(log, { ...this.#get(log), settings, flight: null, materials: new Map() });
  }

  /** A copy of them, to be kept elsewhere. */
  bytes(log: string): ArrayBuffer {
    return this.#get(log).bytes.slice().buffer;
  }

  forget(log: string): void {
    this.#logs.delete(log);
  }

  async flight(log: string, job: Job): Promise<Outcome<Flight>> {
    const kept = this.#get(log);
    if (kept.flight) return usable(kept.flight);
    const flight = await readFlight(sourceOf(kept), null, kept.settings, job);
    if (flight.ok) kept.flight = flight.value;
    return flight;
  }

  async material(log: string, { text }: FacilityText, job: Job): Promise<Outcome<Material>> {
    const kept = this.#get(log);
    const known = kept.materials.get(text);
    if (known) return usable(known);
    // Not by its id, which says nothing to who reads what is wrong with it.
    const defined: Outcome<DefinedFacility> = defineFacility(text, 'The facility');
    if (!defined.ok) return defined;
    const flight = await this.flight(log, job);
    if (!flight.ok) return flight;
    const source = () => sourceOf(kept);
    const material = await materialThere(flight.value, source, defined.value, kept.settings, job);
    if (material.ok) kept.materials.set(text, material.value);
    return material;
  }

  #get(log: string): Kept {
    const kept = this.#logs.get(log);
    if (!kept) throw new Error(`no log ${log} is open`);
    return kept;
  }
}

function sourceOf({ name, bytes, sha256 }: Kept): LogSource {
  return { name, sha256: () => sha256, size: bytes.length, chunks: chunksOf(bytes) };
}

/** Text in chunks, as the command reads it; between them the worker hears whether it is to stop. */
async function* chunksOf(bytes: Uint8Array): AsyncGenerator<string> {
  const decoding = new TextDecoding(UTF8);
  for (let at = 0; at < bytes.length; at += CHUNK_BYTES) {
    yield decoding.decode(bytes.subarray(at, at + CHUNK_BYTES));
    await turn();
  }
  yield decoding.end();
}
