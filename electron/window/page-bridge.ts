import type { HostEvent } from '../bridge/calls.ts';
import type { Answer } from '../bridge/gate.ts';

/** The one channel for calls and the one for events. */
export const CALLS_CHANNEL = 'halfdot:call';
export const EVENTS_CHANNEL = 'halfdot:event';

/** What the page gets of Electron's channel to its host. */
interface Channel {
  readonly invoke: (channel: string, name: string, value: unknown) => Promise<Answer>;
  readonly on: (channel: string, listener: (event: unknown, value: HostEvent) => void) => unknown;
}

/** What the window puts into the page, beside nothing else: no channel can be named, no sender is handed over. */
export function pageBridge(channel: Channel) {
  return {
    call: (name: string, value: unknown): Promise<Answer> => channel.invoke(CALLS_CHANNEL, name, value),
    onEvent: (listener: (event: HostEvent) => void): void => {
      channel.on(EVENTS_CHANNEL, (_, value) => listener(value));
    },
  };
}
