/** What is typed into a field, and so how it is read and shown (`facility-typing.ts`). */
type FieldKind =
  'words' | 'lines' | 'capitals' | 'number' | 'bearing' | 'latitude' | 'longitude' | 'variation';

/** One value of a facility file as a form shows it: a field under its words. */
export interface FacilityField {
  /** Keys from the top of the file down to the value. */
  readonly path: readonly string[];
  /** Says without its group which value it is: sentences about it name it so. */
  readonly words: string;
  /** The unit that the file keeps; null where it has none. */
  readonly unit: string | null;
  readonly kind: FieldKind;
  /** No facility can be used without it. */
  readonly isNeeded: boolean;
}

/** Fields that stand together under a legend. */
export interface FacilitySection {
  /** The group of the file that problems with all of it are told of; null where it is none. */
  readonly path: readonly string[] | null;
  readonly legend: string;
  readonly note: string | null;
  /** Whether the group can be taken out of the file, all of it. */
  readonly isRemovable: boolean;
  readonly fields: readonly FacilityField[];
}

type Traits = Partial<Pick<FacilityField, 'unit' | 'isNeeded' | 'kind'>>;

function field(path: string, words: string, traits: Traits = {}): FacilityField {
  return { path: path.split('.'), words, unit: null, kind: 'words', isNeeded: false, ...traits };
}

function number(path: string, words: string, unit: string, isNeeded = false): FacilityField {
  return field(path, words, { unit, kind: 'number', isNeeded });
}

/** Latitude, longitude and elevation of a place. */
function place(path: string, words: string, isNeeded: boolean): FacilityField[] {
  return [
    field(`${path}.latDeg`, `${words} latitude`, { kind: 'latitude', isNeeded }),
    field(`${path}.lonDeg`, `${words} longitude`, { kind: 'longitude', isNeeded }),
    number(`${path}.elevationFt`, `${words} elevation`, 'ft', isNeeded),
  ];
}

function section(
  legend: string,
  fields: readonly FacilityField[],
  more: Partial<FacilitySection> = {},
): FacilitySection {
  return { path: null, legend, note: null, isRemovable: false, fields, ...more };
}

const AS_PRINTED = 'As the chart prints it: S31 12.5, S31 12 30.4, 311230.4S or -31.2084.';
const BEARING = { unit: 'degrees', kind: 'bearing' } as const;

/** What no facility can be used without. */
export const NEEDED_SECTIONS: readonly FacilitySection[] = [
  section('Name and runway', [
    field('name', 'Name', { isNeeded: true }),
    field('runway.designator', 'Runway designator', { kind: 'capitals', isNeeded: true }),
  ]),
  section('Landing threshold', place('runway.threshold', 'Threshold', true), {
    path: ['runway', 'threshold'],
    note: AS_PRINTED,
  }),
  section(
    'Far end, or bearing and length',
    [
      ...place('runway.farEnd', 'Far end', false),
      field('runway.trueBearingDeg', 'True bearing', BEARING),
      number('runway.lengthFt', 'Runway length', 'ft'),
    ],
    {
      path: ['runway', 'farEnd'],
      note: 'The true bearing and the length only where the position of the far end is not known.',
    },
  ),
  section(
    'Glidepath',
    [
      number('glidepath.angleDeg', 'Glidepath angle', 'degrees', true),
      number('glidepath.thresholdCrossingHeightFt', 'Threshold crossing height', 'ft', true),
    ],
    { path: ['glidepath'] },
  ),
];

/** What a debrief is the richer for, and a usual value stands in for where it is left empty. */
export const MORE_SECTIONS: readonly FacilitySection[] = [
  section(
    'Minimums',
    [
      number('minimums.decisionAltitudeFt', 'Decision altitude', 'ft'),
      number('minimums.rvrFt', 'Runway visual range', 'ft'),
    ],
    { path: ['minimums'] },
  ),
  section(
    'Final approach fix',
    [
      field('finalApproachFix.name', 'Fix name', { kind: 'capitals' }),
      number('finalApproachFix.distanceNm', 'Fix to threshold', 'NM'),
      number('finalApproachFix.altitudeFt', 'Fix altitude', 'ft'),
      number('finalApproachFix.dmeNm', 'DME at the fix', 'NM'),
    ],
    { path: ['finalApproachFix'], isRemovable: true },
  ),
  section(
    'Localizer',
    [
      field('ident', 'Ident', { kind: 'capitals' }),
      number('frequencyMHz', 'Frequency', 'MHz'),
      field('localizer.courseMagneticDeg', 'Magnetic course', BEARING),
      field('localizer.courseTrueDeg', 'True course', BEARING),
      number('localizer.courseWidthDeg', 'Course width, full left to full right', 'degrees'),
      number('localizer.antennaSetbackFt', 'Antenna past the far end', 'ft'),
    ],
    { path: ['localizer'], note: 'The true course only where the localizer is offset from the runway.' },
  ),
  section('Localizer antenna', place('localizer.antenna', 'Localizer antenna', false), {
    path: ['localizer', 'antenna'],
    isRemovable: true,
  }),
  section('Aerodrome and runway', [
    number('airportElevationFt', 'Airport elevation', 'ft'),
    field('magneticVariationDeg', 'Magnetic variation', { unit: 'as 3.5 W', kind: 'variation' }),
    number('runway.touchdownZoneElevationFt', 'Touchdown zone elevation', 'ft'),
    number('runway.widthFt', 'Runway width', 'ft'),
  ]),
  section(
    'Glidepath antenna',
    [
      ...place('glidepath.antenna', 'Glidepath antenna', false),
      number('glidepath.fullScaleDeg', 'Glidepath full scale, one side', 'degrees'),
    ],
    { path: ['glidepath', 'antenna'], isRemovable: true },
  ),
  section(
    'Missed approach',
    [
      number('missedApproach.climbToFt', 'Climb to', 'ft'),
      field('missedApproach.instructions', 'Instructions', { kind: 'lines' }),
    ],
    { path: ['missedApproach'] },
  ),
];

export const FACILITY_SECTIONS: readonly FacilitySection[] = [...NEEDED_SECTIONS, ...MORE_SECTIONS];
export const FACILITY_FIELDS: readonly FacilityField[] = FACILITY_SECTIONS.flatMap(({ fields }) => fields);
