import type { Output } from './command.ts';
import { progressLine } from './progress.ts';
import { writeAll } from './write-all.ts';

const FILE = { stdout: 1, stderr: 2 } as const;
/** Resolves false when nobody reads it. */
type Write = (to: keyof typeof FILE, text: string) => Promise<boolean>;

export interface ProcessOutput extends Output {
  /** Resolves when all that was said was passed on. */
  written(): Promise<void>;
}

/** The process's own output. */
export function processOutput(): ProcessOutput {
  // A console of Windows shows text only that comes by the process's streams; elsewhere to make them takes longer than
  // to read half an hour of a log.
  const write: Write = process.platform === 'win32' ? toStream : toFile;
  let last: Promise<boolean> = Promise.resolve(true);
  let listened = true;
  const message = (line: string): void => void (last = write('stderr', `${line}\n`));
  return {
    async answer(text) {
      // Whoever reads may stop early (`| head`): that is no fault of ours.
      listened &&= await write('stdout', text);
      return listened;
    },
    message,
    job: (label) => progressLine(label, message, () => process.uptime() * 1000),
    written: async () => void (await last),
  };
}

async function toFile(to: keyof typeof FILE, text: string): Promise<boolean> {
  return writeAll(FILE[to], text);
}

function toStream(to: keyof typeof FILE, text: string): Promise<boolean> {
  const stream = process[to];
  if (stream.listenerCount('error') === 0) stream.on('error', () => {});
  return new Promise((resolve) => stream.write(text, (error) => resolve(!error)));
}
