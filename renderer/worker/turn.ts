const channel = new MessageChannel();
let waiting: (() => void)[] = [];
channel.port1.addEventListener('message', () => {
  const due = waiting;
  waiting = [];
  for (const resolve of due) resolve();
});
channel.port1.start();

/** Lets the messages that wait be heard: a promise alone never does, and a timer waits four milliseconds. */
export function turn(): Promise<void> {
  return new Promise((resolve) => {
    waiting.push(resolve);
    channel.port2.postMessage(null);
  });
}
