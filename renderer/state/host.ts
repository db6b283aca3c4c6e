import type { CallName, HostEvent, Input, Output } from '../../electron/bridge/calls.ts';
import type { Answer } from '../../electron/bridge/gate.ts';

/** What a desktop window puts into the page; absent in a browser. */
interface Bridge {
  call(name: string, value: unknown): Promise<Answer>;
  onEvent(listener: (event: HostEvent) => void): void;
}

declare global {
  interface Window {
    readonly halfdot?: Bridge;
  }
}

/** A call that did not work; its message is a sentence for a person. */
export class HostProblem extends Error {}

/** What was asked for is not there any more: asking again will not help. */
export class GoneAtHost extends HostProblem {}

/** Calls the host, whichever it is; refused calls are thrown as sentences. */
export async function call<N extends CallName>(name: N, input: Input<N>): Promise<Output<N>> {
  const answer = await (window.halfdot ?? overHttp).call(name, input);
  if (!answer.ok) throw new (answer.code === 'gone' ? GoneAtHost : HostProblem)(answer.message);
  return answer.value as Output<N>;
}

/** Hears what happens at the host, for as long as the page is there. */
export function onHostEvent(listener: (event: HostEvent) => void): void {
  (window.halfdot ?? overHttp).onEvent(listener);
}

/** The token stands behind the `#` of the address, where no request carries it. */
const authorization = (): HeadersInit => ({ authorization: `Bearer ${location.hash.slice(1)}` });

/** A browser sends so much for a page that is closed, 64 KiB less some room for other calls. */
const LARGEST_KEEPALIVE = 60_000;

const overHttp: Bridge = {
  async call(name, value) {
    let response: Response;
    const body = JSON.stringify(value);
    try {
      response = await fetch(`/call/${name}`, {
        method: 'POST',
        headers: { ...authorization(), 'content-type': 'application/json' },
        body,
        // What was changed last is kept also when the page is closed in the same moment.
        keepalive: name === 'saveNotes' && new Blob([body]).size < LARGEST_KEEPALIVE,
      });
    } catch {
      return {
        ok: false,
        code: 'fault',
        message: 'Halfdot was ended. Start it again, and open this page from there.',
      };
    }
    if (response.ok) return (await response.json()) as Answer;
    const message =
      response.status === 403
        ? 'This page was not opened by Halfdot. Open the address that it printed.'
        : 'Halfdot did not understand its own page: please load it again.';
    return { ok: false, code: 'fault', message };
  },
  onEvent(listener) {
    void listen(listener);
  },
};

async function listen(listener: (event: HostEvent) => void): Promise<void> {
  const response = await fetch('/events', { method: 'POST', headers: authorization() });
  if (!response.ok || !response.body) return;
  let rest = '';
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    const lines = (rest + value).split('\n');
    rest = lines.pop()!;
    for (const line of lines) {
      // Empty lines only show that the host is alive.
      if (line !== '') listener(JSON.parse(line) as HostEvent);
    }
  }
}

/** Bytes of a file that the host hands over. */
export function bytesOf(base64: string): ArrayBuffer {
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes.buffer;
}

/** The other way, without standing still for a large file. */
export function base64Of(bytes: ArrayBuffer): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => resolve(base64In(reader.result as string)));
    reader.addEventListener('error', () => reject(new HostProblem('There is too little memory to copy it.')));
    reader.readAsDataURL(new Blob([bytes]));
  });
}

/** Of an address that holds its data, what stands behind the comma. */
function base64In(address: string): string {
  return address.slice(address.indexOf(',') + 1);
}
