import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { tallyOf, WAYS } from './tally.ts';

/** `npm run simulate [flights]`: how often the band holds the truth, and how often a verdict is wrong or unclear. */
const flights = Number(process.argv[2] ?? 2000);
const seeds = Array.from({ length: flights }, (_, seed) => seed);
const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
for (const [name, way] of Object.entries(WAYS)) {
  const tally = await tallyOf(way, seeds, DEFAULT_STANDARD, (done) => {
    if (done % 100 === 0) process.stderr.write(`\r${name}: ${done} of ${flights} flights`);
  });
  process.stderr.write('\r');
  console.log(
    `${name.padEnd(10)} ${tally.flights} flights: true localizer within the band ${percent(tally.localizerWithin)}, ` +
      `glidepath ${percent(tally.glidepathWithin)}; of ${tally.verdicts} verdicts met but not in truth ` +
      `${percent(tally.metWrong)}, not met but in truth ${percent(tally.notMetWrong)}, unclear ${percent(tally.unclear)}`,
  );
}
