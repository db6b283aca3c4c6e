import type { Issue } from '../issue/issue.ts';

/**
 * What a column of a log can hold. The name carries the unit that values are kept in, whatever the file's unit.
 * Adding a quantity: a line here, and its words in `column-words.ts`.
 */
export const QUANTITIES = [
  'latDeg',
  'lonDeg',
  /** Height above mean sea level from GNSS. */
  'altitudeGeometricFt',
  /** Height above the WGS84 ellipsoid. */
  'altitudeEllipsoidFt',
  /** What the altimeter shows, its setting applied. */
  'altitudeIndicatedFt',
  /** Altimeter at 1013.25 hPa. */
  'altitudePressureFt',
  /** The transponder's pressure altitude, in steps of 25 or 100 ft. */
  'altitudeTransponderFt',
  'altitudeCabinFt',
  /** An altitude whose header does not say which kind. */
  'altitudeUnnamedFt',
  /** Height of the geoid above the ellipsoid. */
  'geoidHeightM',
  'groundspeedKt',
  'courseTrueDeg',
  'courseMagneticDeg',
  'headingMagneticDeg',
  'headingTrueDeg',
  'airspeedIndicatedKt',
  'airspeedTrueKt',
  'verticalSpeedFpm',
  'pitchDeg',
  'bankDeg',
  'altimeterSettingHpa',
  'outsideTemperatureC',
  'horizontalAccuracyM',
  'verticalAccuracyM',
  'horizontalProtectionM',
  'verticalProtectionM',
  'hdop',
  'vdop',
  /** Recorded needles, as fractions of full scale, sign as recorded. */
  'localizerRecordedFullScale',
  'glidepathRecordedFullScale',
  'powerPercent',
  'engineRpm',
  'manifoldPressureInHg',
  'flapDeg',
  'gearDown',
] as const;
export type Quantity = (typeof QUANTITIES)[number];

/** What a column can be taken for: a quantity, or a part of the time. */
export const TIME_ROLES = ['dateTime', 'date', 'timeOfDay', 'utcOffset', 'epoch', 'elapsed'] as const;
export type TimeRole = (typeof TIME_ROLES)[number];
export type ColumnRole = Quantity | TimeRole;

/** The kinds of altitude that a user may say a log's altitude is, where its header does not. */
export const ALTITUDE_KINDS = ['geometric', 'ellipsoid', 'indicated', 'pressure'] as const;
export type AltitudeKind = (typeof ALTITUDE_KINDS)[number];

/**
 * How the unit of a column is known: the user said it, the file's head names it, the units of the other columns make
 * it likely, the positions or the values show it, it is nearly always this one (headings in degrees), or it was
 * assumed where another is just as possible.
 */
export type UnitFrom = 'user' | 'header' | 'others' | 'positions' | 'values' | 'usual' | 'assumed';

/** A unit that values were read in, by its name in `unit-words.ts`. */
export interface UnitRead {
  readonly name: string;
  readonly from: UnitFrom;
}

export interface LogColumn {
  /** Place in the row, counted from 0. */
  readonly index: number;
  readonly header: string;
  /** The unit as the file writes it, or its pattern of a time; null when it names none. */
  readonly unitText: string | null;
  /** The unit that its values were read in; null when it has none, or is not used. */
  readonly unitRead: UnitRead | null;
  /** Null when the column is not used. */
  readonly role: ColumnRole | null;
  /** How sure the recognition is, 0 to 1; 1 when the user said so. */
  readonly confidence: number;
  /** Why it was taken for that, in words for a person. */
  readonly why: string;
}

/**
 * One file, read: columns of equal length, one row a fix that has a time and a position, in the file's order.
 * A value that a row lacks is NaN. Nothing has been sorted or cleaned yet: that is the track's work.
 */
export interface Log {
  /** Base name of the file. */
  readonly name: string;
  readonly sha256: string;
  readonly kind: 'csv' | 'gpx';
  /** What was recognised, in words: "comma-separated, header on line 4, units on line 3". */
  readonly recognised: string;
  /** `elapsed`: the file counts from its own start and `timeS` begins at 1970 unless a start was given. */
  readonly timeReference: 'utc' | 'local' | 'elapsed';
  /**
   * How far its clock is ahead of UTC, by the first row that says so; null where none does, and for a clock that runs
   * on UTC: an offset of 0 tells nothing of the place.
   */
  readonly utcOffsetS: number | null;
  readonly columns: readonly LogColumn[];
  /** Rows of data seen, also those left out. */
  readonly rowsSeen: number;
  /** Seconds since 1970-01-01T00:00:00Z. */
  readonly timeS: Float64Array;
  /** Line of the file that each fix stands on, counted from 1. */
  readonly line: Uint32Array;
  readonly values: { readonly latDeg: Float64Array; readonly lonDeg: Float64Array } & {
    readonly [Q in Quantity]?: Float64Array;
  };
  /** Rows at which the file itself begins a new stretch (a GPX segment, a header repeated after a power cycle). */
  readonly breaks: readonly number[];
  readonly issues: readonly Issue[];
}

/** A file as a host hands it over: already decoded to text, hashed, and cut into chunks of any size. */
export interface LogSource {
  readonly name: string;
  readonly sha256: () => string;
  /** Size in characters or bytes, for progress; null when unknown. */
  readonly size: number | null;
  readonly chunks: Iterable<string> | AsyncIterable<string>;
}

/** How a long job is watched and stopped. */
export interface Job {
  /** Share done, 0 to 1; null when it cannot be known. */
  progress(share: number | null): void;
  cancelled(): boolean;
}

/** What the user may say about a log where the file does not. */
export interface LogSettings {
  /** Roles by header text, in place of what was recognised; null leaves the column out. */
  readonly columns?: Readonly<Record<string, ColumnRole | null>>;
  /**
   * Units by header text, over whatever the file names: by their names in `unit-words.ts` (`m`, `km/h`, `dots of 5`) or
   * any spelling of theirs. One that is not known, or that the column cannot be in, is refused.
   */
  readonly units?: Readonly<Record<string, string>>;
  /** What an altitude is that no header names the kind of, such as the `ele` of GPX. */
  readonly altitudeKind?: AltitudeKind;
  readonly dateOrder?: 'ymd' | 'dmy' | 'mdy';
  /** IANA name or fixed offset (`+02:00`) of local times. */
  readonly timeZone?: string;
  /** Start of an elapsed-time log, in seconds since 1970 UTC. */
  readonly startS?: number;
  /** The altimeter setting of the flight: makes an indicated altitude of a pressure altitude. */
  readonly altimeterSettingHpa?: number;
  /** What the positions come from. */
  readonly receiver?: 'augmented' | 'plain' | 'phone';
  /** The aerodrome's air: corrects the height of an altimeter where it has to stand for the beam's. */
  readonly temperatureC?: number;
}
