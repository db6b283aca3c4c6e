import { decimalYear } from '../../core/earth/magnetic.ts';
import { checkFacility } from '../../core/facility/contradictions.ts';
import { facilityText } from '../../core/report/facility-text.ts';
import { EXIT, type Command } from './command.ts';
import { readFacility, refuse } from './read-input.ts';

export const facility: Command = {
  name: 'facility',
  usage: 'F.json [--format text|json]',
  purpose: 'check a facility file and print what follows from it',
  options: { format: { value: 'text or json', oneOf: ['text', 'json'] } },
  minFiles: 1,
  maxFiles: 1,
  async run({ files, options }, output) {
    const defined = readFacility(files[0]!);
    if (!defined.ok) return refuse(defined.refusal, output);
    const { facility, geometry } = defined.value;
    // The magnetic model wants a year, and a facility file alone has none but today's.
    const issues = checkFacility(facility, geometry, decimalYear(Date.now() / 1000));
    const asJson = options['format']?.[0] === 'json';
    const text = asJson
      ? `${JSON.stringify({ facility, derived: geometry, issues }, null, 2)}\n`
      : facilityText(facility, geometry, issues);
    await output.answer(text);
    return EXIT.done;
  },
};
