import { deviationsCsv } from '../../core/report/deviations-csv.ts';
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
    const material = await readMaterial(args.files[0]!, facility.value, settings.value, output);
    if (!material.ok) return refuse(material.refusal, output);
    tell(material.issues, output);
    for (const block of deviationsCsv(material.value.track, material.value.deviations))
      if (!(await output.answer(block))) break;
    return EXIT.done;
  },
};
