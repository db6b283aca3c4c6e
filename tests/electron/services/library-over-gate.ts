import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect } from 'vitest';
import type { CallName, Input, Output } from '../../../electron/bridge/calls.ts';
import { EVERY_FLIGHT } from '../../../electron/bridge/every-flight.ts';
import type { FlightFilter } from '../../../electron/bridge/library-calls.ts';
import { gateTo, type Answer } from '../../../electron/bridge/gate.ts';
import { GivenFiles } from '../../../electron/services/given-files.ts';
import { LibraryHost } from '../../../electron/services/library-host.ts';
import { Samples } from '../../../electron/services/samples.ts';
import { servicesOf } from '../../../electron/services/services.ts';
import { SAMPLES } from '../library/some-library.ts';

let folder: string;
/** The library of the host, new for each test. */
export let library: LibraryHost;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-host-'));
  library = new LibraryHost(join(folder, 'library'));
});
afterEach(async () => {
  await library.close();
  rmSync(folder, { recursive: true, force: true });
});

/** As the page asks, through the gate that both hosts have. */
export function asked<N extends CallName>(name: N, input: Input<N>): Promise<Answer> {
  const services = servicesOf('browser', {
    samples: new Samples(SAMPLES),
    given: new GivenFiles(),
    userFolder: folder,
    library,
  });
  return gateTo(services)(name, input);
}

export async function call<N extends CallName>(name: N, input: Input<N>): Promise<Output<N>> {
  const answer = await asked(name, input);
  expect(answer).toMatchObject({ ok: true });
  return (answer as { value: Output<N> }).value;
}

export const sample = (name: string) => readFileSync(join(SAMPLES, name));

export function toKeep(name: string, change: Partial<Input<'keepInLibrary'>> = {}): Input<'keepInLibrary'> {
  return {
    name,
    folders: [],
    base64: sample(name).toString('base64'),
    facilities: [sample('petrelholm-ils-07.json').toString()],
    asked: {
      standard: { kind: 'shipped', id: 'instrument-rating' },
      stated: {},
      settings: {},
      heights: null,
      antennaHeightFt: null,
    },
    student: { by: 'name', name: 'Rowan Teal' },
    date: null,
    how: 'bring-in',
    ...change,
  };
}

export async function kept(name = 'first-approach.csv', change: Partial<Input<'keepInLibrary'>> = {}) {
  const answer = await call('keepInLibrary', toKeep(name, change));
  if (answer.became === 'refused') throw new Error(answer.why);
  return answer;
}

export const list = async (filter: Partial<FlightFilter> = {}) =>
  call('libraryFlights', {
    filter: { ...EVERY_FLIGHT, ...filter },
    order: { by: 'flown', isDown: true },
    from: 0,
    count: 100,
  });

/** Of the only debrief. */
export const documentOf = async () => (await list()).rows[0]!.document;
