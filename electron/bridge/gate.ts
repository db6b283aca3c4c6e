import { z } from 'zod';
import { CALLS, type CallName, type Services } from './calls.ts';

/** The answer to a call: the value, or a sentence for a person and a code to decide by. */
export type Answer =
  | { readonly ok: true; readonly value: unknown }
  | {
      readonly ok: false;
      readonly code: 'unknown-call' | 'bad-value' | 'unusable' | 'gone' | 'fault';
      readonly message: string;
    };

/** Thrown by a service for what the user can do something about; its message is a sentence for a person. */
export class Unusable extends Error {
  readonly code: 'unusable' | 'gone' = 'unusable';
}

/** The same for what is not there any more: asking again will not help. */
export class Gone extends Unusable {
  override readonly code = 'gone';
}

/**
 * The one gate between a page and its host. It takes a name and a value of any kind, calls the service of that name
 * when the value is what the contract says, and checks what comes back as well. It never throws.
 */
export function gateTo(services: Services): (name: unknown, value: unknown) => Promise<Answer> {
  return async (name, value) => {
    if (typeof name !== 'string' || !Object.hasOwn(CALLS, name))
      return { ok: false, code: 'unknown-call', message: 'There is no such call.' };
    const { input, output } = CALLS[name as CallName];
    const checked = input.safeParse(value);
    if (!checked.success) return { ok: false, code: 'bad-value', message: z.prettifyError(checked.error) };
    try {
      const service = services[name as CallName] as (value: unknown) => Promise<unknown>;
      return { ok: true, value: output.parse(await service(checked.data)) };
    } catch (error) {
      if (error instanceof Unusable) return { ok: false, code: error.code, message: error.message };
      return { ok: false, code: 'fault', message: 'This is a fault of the program, not of your file.' };
    }
  };
}
