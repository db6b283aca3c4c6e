import { PAPERS } from '../../core/briefing/papers.ts';
import { EXIT, type Command } from './command.ts';
import { readFacility, refuse } from './read-input.ts';

export const brief: Command = {
  name: 'brief',
  usage:
    '--facility F.json --groundspeed KT [--airspeed KT] [--wind 250/18] [--temperature C] ' +
    '[--decision-altitude FT --decision-altitude-again FT] [--objective TEXT] [--entered-by NAME] ' +
    '[--entered-on DATE] [--dots 2|5] [--paper a5|half-letter] [--format text|json|html]',
  purpose: 'print the briefing sheet of an approach that will be flown',
  options: {
    facility: { value: 'the name of a facility file', required: true },
    groundspeed: { value: 'the groundspeed on final, in knots', required: true },
    airspeed: { value: 'the indicated airspeed on final, in knots' },
    wind: { value: 'the wind on final as 250/18, degrees true and knots' },
    temperature: { value: 'the temperature at the aerodrome, in °C' },
    'decision-altitude': { value: 'the decision altitude of the current chart, in feet' },
    'decision-altitude-again': { value: 'the same, typed again' },
    objective: { value: 'the objective of the lesson' },
    'entered-by': { value: 'who entered the data of the facility' },
    'entered-on': { value: 'of which day these data are, as 2026-05-01' },
    dots: { value: 'how many dots the display has to full scale, 2 or 5', oneOf: ['2', '5'] },
    paper: { value: 'what the html is printed on', oneOf: PAPERS },
    format: { value: 'text, json or html', oneOf: ['text', 'json', 'html'] },
  },
  minFiles: 0,
  maxFiles: 0,
  async run(args, output) {
    const defined = readFacility(args.options['facility']![0]!);
    if (!defined.ok) return refuse(defined.refusal, output);
    // Loaded when it is asked for: no other command does with it.
    const { briefingSheet } = await import('./briefing-sheet.ts');
    const sheet = briefingSheet(defined.value, args);
    if (!sheet.ok) return refuse(sheet.refusal, output);
    await output.answer(sheet.value);
    return EXIT.done;
  },
};
