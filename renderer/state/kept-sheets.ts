import type { LogSettings } from '../../core/log/log.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';
import { NOTHING_STATED, type Stated } from '../../core/standard/stated.ts';
import type { Output } from '../../electron/bridge/calls.ts';
import type { Analyst, Running } from './analyst.ts';
import { bytesOf, call, HostProblem } from './host.ts';
import { sha256Of } from './sha256-of.ts';

type Kept = Output<'readDebrief'>;

/** Sheets of approaches that are kept in the library, drawn without being opened. */
export class KeptSheets {
  readonly #analyst: Analyst;
  #last = 0;

  constructor(analyst: Analyst) {
    this.#analyst = analyst;
  }

  /** The sheets of all approaches of a kept debrief, in their order; what keeps them from being drawn is thrown. */
  async of(debriefId: string, signal: AbortSignal): Promise<readonly Sheet[]> {
    const kept = await call('readDebrief', { debriefId });
    const log = `kept ${++this.#last}`;
    try {
      await this.#read(log, kept, signal);
      const { stated, heights, antennaHeightFt } = kept;
      const asked = {
        standard: { kind: 'kept', text: kept.standard },
        stated: { ...NOTHING_STATED, ...(stated as Partial<Stated>) },
        heights,
        antennaHeightFt,
      } as const;
      const facility = { id: log, text: kept.facility };
      const { sheets } = await done(this.#analyst.start('debrief', { log, facility, asked }), signal);
      return sheets;
    } finally {
      void this.#analyst.start('forget', { log }).done;
    }
  }

  async #read(log: string, { name, base64, settings }: Kept, signal: AbortSignal): Promise<void> {
    const bytes = bytesOf(base64);
    const sha256 = await sha256Of(bytes);
    const asked = { log, name, bytes, sha256, settings: settings as LogSettings };
    await done(this.#analyst.start('read', asked), signal);
  }
}

async function done<T>(running: Running<T>, signal: AbortSignal): Promise<T> {
  if (signal.aborted) running.cancel();
  signal.addEventListener('abort', () => running.cancel(), { once: true });
  const made = await running.done;
  if (made.kind === 'done') return made.value;
  throw new HostProblem(made.kind === 'refused' ? made.issue.message : made.message);
}
