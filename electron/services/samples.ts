import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { CALLS, type Output } from '../bridge/calls.ts';
import { Unusable } from '../bridge/gate.ts';

const CATALOGUE = z.strictObject({
  facilities: z.array(z.string()),
  flights: CALLS.samples.output,
});

/** The shipped flights and their facilities, as their catalogue lists them; nothing else of the folder is read. */
export class Samples {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  list(): Output<'samples'> {
    return this.#catalogue().flights;
  }

  read(file: string): Output<'readSample'> {
    const { facilities, flights } = this.#catalogue();
    const known = facilities.includes(file) || flights.some((flight) => flight.file === file);
    if (!known) throw new Unusable('There is no such sample.');
    return { name: file, base64: readFileSync(join(this.#folder, file)).toString('base64') };
  }

  #catalogue(): z.infer<typeof CATALOGUE> {
    return CATALOGUE.parse(JSON.parse(readFileSync(join(this.#folder, 'catalogue.json'), 'utf8')));
  }
}
