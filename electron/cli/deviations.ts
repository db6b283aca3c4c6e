import { statSync } from 'node:fs';
import { EXIT, type Command } from './command.ts';
import { LOG_OPTIONS, logSettings } from './log-options.ts';
import { readFacility, readMaterial, refuse, tell } from './read-input.ts';

export const deviations: Command = {
  name: 'deviations',
  usage: 'LOG --facility F.json',
  purpose: 'print where every fix stands against the localizer and the glidepath, as CSV',
  options: { facility: { value: 'a facility file', required: true }, ...LOG_OPTIONS },
  minFiles: 1,
  maxFiles: 1,
  async run(args, output) {
    const settings = logSettings(args);
    if (!settings.ok) return refuse(settings.refusal, output);
    const facility = readFacility(args.options['facility']![0]!);
    if (!facility.ok) return refuse(facility.refusal, output);
    const [log] = args.files as [string];
    // No other command needs threads, which take as long to load as to read a facility.
    const { SecondLane } = await import('./second-lane.ts');
    const lane = new SecondLane(statSync(log, { throwIfNoEntry: false })?.size ?? 0);
    try {
      const material = await readMaterial(log, facility.value, settings.value, output);
      if (!material.ok) return refuse(material.refusal, output);
      tell(material.issues, output);
      const { track, deviations: columns, geometry } = material.value;
      for await (const block of lane.texts(track, columns, geometry))
        if (!(await output.answer(block))) break;
      return EXIT.done;
    } finally {
      await lane.close();
    }
  },
};
