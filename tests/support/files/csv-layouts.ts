import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { decimal, type CsvColumn, type CsvLayout } from './csv.ts';
import type { LoggedFix } from './logged-fix.ts';
import { dateText, germanDate, isoUtc, timeText } from './time-text.ts';

type NumberName = { [K in keyof LoggedFix]: LoggedFix[K] extends number ? K : never }[keyof LoggedFix];

const KMH_PER_KT = 1.852;
const MPS_PER_KT = 1852 / 3600;
const MPS_PER_FPM = METRES_PER_FOOT / 60;

function number(header: string, name: NumberName, decimals: number, factor = 1, unit?: string): CsvColumn {
  return {
    header,
    ...(unit !== undefined && { unit }),
    cell: (fix) => decimal(fix[name] * factor, decimals),
  };
}

const NEEDLES: readonly CsvColumn[] = [
  { header: 'Localizer Deviation (dots)', cell: (fix) => dots(fix.localizerFullScale) },
  { header: 'Glidepath Deviation (dots)', cell: (fix) => dots(fix.glidepathFullScale) },
];

/** A needle stops at two dots, and points to where the course is. */
function dots(fullScale: number): string {
  return decimal(-2 * Math.max(-1, Math.min(1, fullScale)), 2);
}

/**
 * English, the unit in every name, one time column in UTC. `timeDecimals` 1 suits more than one fix a second. With
 * `needles`, what the two needles showed, in dots of two and as they point: to the left when right of course.
 */
export function englishLayout(timeDecimals: 0 | 1 | 3 = 0, needles = false): CsvLayout {
  return {
    delimiter: ',',
    columns: [
      { header: 'Date/Time (UTC)', cell: (fix) => isoUtc(fix.timeS, timeDecimals) },
      number('Latitude (deg)', 'latDeg', 7),
      number('Longitude (deg)', 'lonDeg', 7),
      number('Indicated Altitude (ft)', 'indicatedAltitudeFt', 0),
      number('GNSS Altitude (ft MSL)', 'gnssAltitudeFt', 1),
      number('Indicated Airspeed (kt)', 'airspeedIndicatedKt', 1),
      number('Groundspeed (kt)', 'groundspeedKt', 1),
      number('Track (deg true)', 'trackTrueDeg', 1),
      number('Heading (deg magnetic)', 'headingMagneticDeg', 1),
      number('Vertical Speed (ft/min)', 'verticalSpeedFpm', 0),
      number('Pitch (deg)', 'pitchDeg', 1),
      number('Bank (deg)', 'bankDeg', 1),
      number('Altimeter Setting (hPa)', 'altimeterSettingHpa', 0),
      ...(needles ? NEEDLES : []),
    ],
  };
}

/** Remarks first, then names, then a row of units; local date and time with the offset beside them; padded cells. */
export function unitsRowLayout(remarks: readonly string[], offsetMinutes: number): CsvLayout {
  const local = (fix: LoggedFix): number => fix.timeS + offsetMinutes * 60;
  return {
    delimiter: ',',
    preamble: remarks.map((remark) => `# ${remark}`),
    unitsRow: true,
    lineEnd: '\r\n',
    padTo: 9,
    columns: [
      number('Latitude', 'latDeg', 7, 1, 'degrees'),
      number('Longitude', 'lonDeg', 7, 1, 'degrees'),
      number('Airspeed', 'airspeedIndicatedKt', 1, 1, 'knots indicated'),
      number('Ground Speed', 'groundspeedKt', 1, 1, 'knots'),
      number('Ground Track', 'trackTrueDeg', 0, 1, 'degrees true'),
      number('Indicated Altitude', 'indicatedAltitudeFt', 0, 1, 'feet'),
      number('GNSS Altitude', 'gnssAltitudeFt', 0, 1, 'feet above sea level'),
      number('Altimeter Setting', 'altimeterSettingHpa', 0, 1, 'hPa'),
      number('Vertical Speed', 'verticalSpeedFpm', 0, 1, 'feet per minute'),
      number('Bank Angle', 'bankDeg', 1, 1, 'degrees'),
      number('Pitch Angle', 'pitchDeg', 1, 1, 'degrees'),
      number('Air Temperature', 'outsideTemperatureC', 1, 1, 'degrees Celsius'),
      number('Horizontal Accuracy', 'horizontalAccuracyM', 1, 1, 'metres'),
      number('Vertical Accuracy', 'verticalAccuracyM', 1, 1, 'metres'),
      { header: 'Date', unit: 'local', cell: (fix) => dateText(local(fix)) },
      { header: 'Time', unit: 'local', cell: (fix) => timeText(local(fix)) },
      { header: 'UTC Offset', unit: 'hh:mm', cell: () => offsetText(offsetMinutes) },
    ],
  };
}

/** German words, semicolons, decimal commas, metres and km/h; starts with a byte-order mark. */
export function germanLayout(): CsvLayout {
  const columns = [
    number('Breite [°]', 'latDeg', 7),
    number('Länge [°]', 'lonDeg', 7),
    number('GPS-Höhe [m]', 'gnssAltitudeFt', 1, METRES_PER_FOOT),
    number('Angezeigte Höhe [m]', 'indicatedAltitudeFt', 1, METRES_PER_FOOT),
    number('Geschwindigkeit über Grund [km/h]', 'groundspeedKt', 1, KMH_PER_KT),
    number('Kurs über Grund [°]', 'trackTrueDeg', 0),
    number('Fluggeschwindigkeit [km/h]', 'airspeedIndicatedKt', 1, KMH_PER_KT),
    number('Vertikalgeschwindigkeit [m/s]', 'verticalSpeedFpm', 2, MPS_PER_FPM),
  ];
  return {
    delimiter: ';',
    lineEnd: '\r\n',
    byteOrderMark: true,
    columns: [
      { header: 'Datum', cell: (fix) => germanDate(fix.timeS) },
      { header: 'Uhrzeit (UTC)', cell: (fix) => timeText(fix.timeS) },
      ...columns.map(withComma),
    ],
  };
}

/** Short names of a programmer, epoch milliseconds, SI units. */
export function epochLayout(): CsvLayout {
  return {
    delimiter: ',',
    columns: [
      { header: 'epoch_ms', cell: (fix) => String(Math.round(fix.timeS * 1000)) },
      number('lat', 'latDeg', 7),
      number('lon', 'lonDeg', 7),
      number('altitude_msl_m', 'gnssAltitudeFt', 2, METRES_PER_FOOT),
      number('ground_speed_m_s', 'groundspeedKt', 2, MPS_PER_KT),
      number('track_true_deg', 'trackTrueDeg', 1),
      number('climb_m_s', 'verticalSpeedFpm', 2, MPS_PER_FPM),
      number('horizontal_accuracy_m', 'horizontalAccuracyM', 1),
      number('vertical_accuracy_m', 'verticalAccuracyM', 1),
    ],
  };
}

/** Seconds since the recorder was switched on, and no date at all. */
export function elapsedLayout(startS: number): CsvLayout {
  return {
    delimiter: ',',
    columns: [
      { header: 'Elapsed Time (s)', cell: (fix) => decimal(fix.timeS - startS, 1) },
      number('Latitude (deg)', 'latDeg', 7),
      number('Longitude (deg)', 'lonDeg', 7),
      number('Altitude MSL (ft)', 'gnssAltitudeFt', 0),
      number('Ground Speed (kt)', 'groundspeedKt', 1),
      number('Track (deg true)', 'trackTrueDeg', 0),
    ],
  };
}

function withComma(column: CsvColumn): CsvColumn {
  return { header: column.header, cell: (fix) => column.cell(fix).replace('.', ',') };
}

function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${twoDigits(Math.floor(size / 60))}:${twoDigits(size % 60)}`;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}
