import type { Output } from './command.ts';
import { progressLine } from './progress.ts';

/** The process's own streams. */
export function processOutput(): Output {
  const { stdout, stderr } = process;
  let listened = true;
  // Whoever reads may stop early (`| head`): that is no fault of ours.
  stdout.on('error', () => (listened = false));
  const message = (line: string) => void stderr.write(`${line}\n`);
  return {
    async answer(text) {
      if (listened && !stdout.write(text))
        await new Promise<void>((resolve) => {
          stdout.once('drain', resolve);
          stdout.once('error', () => resolve());
        });
      return listened;
    },
    message,
    job: (label) => progressLine(label, message, () => process.uptime() * 1000),
  };
}
