import { readFlight } from '../../core/analyze.ts';
import { inspection } from '../../core/report/inspection.ts';
import { inspectionText } from '../../core/report/inspection-text.ts';
import { openLog } from '../files/open-log.ts';
import { EXIT, type Command } from './command.ts';
import { LOG_OPTIONS, logSettings } from './log-options.ts';
import { refuse } from './read-input.ts';

export const inspect: Command = {
  name: 'inspect',
  usage: 'LOG [--format text|json]',
  purpose: 'say what a log holds: kind, columns and units, time, rate, gaps, problems',
  options: { format: { value: 'text or json', oneOf: ['text', 'json'] }, ...LOG_OPTIONS },
  minFiles: 1,
  maxFiles: 1,
  async run(args, output) {
    const settings = logSettings(args);
    if (!settings.ok) return refuse(settings.refusal, output);
    const source = openLog(args.files[0]!);
    if (!source.ok) return refuse(source.refusal, output);
    const job = output.job(`Reading ${source.value.name}`);
    const flight = await readFlight(source.value, null, settings.value, job);
    if (!flight.ok) return refuse(flight.refusal, output);
    const found = inspection(flight.value.log, flight.value.track);
    const asJson = args.options['format']?.[0] === 'json';
    await output.answer(asJson ? `${JSON.stringify(found, null, 2)}\n` : inspectionText(found));
    return EXIT.done;
  },
};
