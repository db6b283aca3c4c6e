import type { FacilityFile } from '../flight/facility-file.ts';
import { optionsOf } from './sample-options.ts';
import type { SampleFlight } from './sample-flights.ts';

/** The page that goes with the samples. */
export function readmeText(
  facilities: ReadonlyMap<string, FacilityFile>,
  flights: readonly SampleFlight[],
): string {
  return [
    '# Samples',
    '',
    'Invented flights by invented people at invented aerodromes, where charts show open ocean. Nothing here is real, and',
    'nothing here is for navigation. All of it is made by `tests/support/make-samples.ts`, this page too: change it there.',
    '',
    '## Aerodromes',
    '',
    '| file | aerodrome | runway | glidepath | minimums | what is special |',
    '| --- | --- | --- | --- | --- | --- |',
    ...[...facilities].map(([file, facility]) => facilityRow(file, facility)),
    '',
    '## Flights',
    '',
    ...[...facilities].flatMap(([file, facility]) => flightsAt(file, facility, flights)),
    '## Records',
    '',
    '`records.txt` holds official records of an invented region, as ARINC 424 writes them: Petrelholm, Whimbrelness, and a',
    'third aerodrome without a glideslope. `halfdot records` lists it and makes facility files of it.',
    '',
    '## Debriefs',
    '',
    'What the program answers to each is kept in `debriefs/`, as text and as JSON, so that every change of an answer is',
    'seen. Each is made with its facility and these options:',
    '',
    '| log | options |',
    '| --- | --- |',
    ...flights.map(({ file }) => `| ${file} | ${optionsOf(file).join(' ')} |`),
    '',
    '## People',
    '',
    `Students: ${people(flights.filter((flight) => flight.instructor).map((flight) => flight.student))}.`,
    `Instructors: ${people(flights.flatMap((flight) => flight.instructor ?? []))}.`,
    `On their own: ${people(flights.filter((flight) => !flight.instructor).map((flight) => flight.student))}.`,
    '',
  ].join('\n');
}

function facilityRow(file: string, facility: FacilityFile): string {
  const { runway, glidepath, localizer, minimums } = facility;
  const aerodrome = facility.name.split(' ')[0];
  const special =
    localizer.courseTrueDeg !== undefined
      ? 'offset localizer, short runway'
      : glidepath.antenna
        ? 'high and steep, course width given'
        : 'flat, nothing unusual';
  return `| ${[file, aerodrome, runway.designator, `${glidepath.angleDeg}°`, `${minimums.decisionAltitudeFt} ft`, special].join(' | ')} |`;
}

function flightsAt(file: string, facility: FacilityFile, flights: readonly SampleFlight[]): string[] {
  return [
    `### With ${file}`,
    '',
    '| log | flown | what it shows | kind of file |',
    '| --- | --- | --- | --- |',
    ...flights.filter((flight) => flight.plan.facility === facility).map(flightRow),
    '',
  ];
}

function flightRow(flight: SampleFlight): string {
  const date = flight.plan.startUtc.slice(0, 10);
  const by = flight.instructor ? `${flight.student} with ${flight.instructor}` : `${flight.student}, alone`;
  return `| ${flight.file} | ${date}, ${by} | ${flight.shows} | ${flight.habit} |`;
}

function people(names: readonly string[]): string {
  return [...new Set(names)].join(', ');
}
