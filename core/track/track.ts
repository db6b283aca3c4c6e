import type { Issue } from '../issue/issue.ts';
import type { Quantity } from '../log/log.ts';
import type { Receiver } from './receiver.ts';

/** Bits of `Track.flags`: what is peculiar about a fix that stays in the track. */
export const FIX_FLAG = {
  /** The interval before this fix is a gap: nothing is interpolated across it. */
  gapBefore: 1,
  /** The position stands still although the aircraft moves. */
  frozen: 2,
  /** Reached with a speed that its neighbours do not support. */
  jumped: 4,
} as const;

/** Quantities that a log can hold beside time, position and the altitudes. */
export type ExtraQuantity = Exclude<Quantity, 'latDeg' | 'lonDeg'>;

/**
 * The clean, time-ordered fixes of a log, in columns of equal length. A value that is not known is NaN.
 * Times are strictly increasing; positions are finite and never (0, 0).
 */
export interface Track {
  readonly count: number;
  /** Seconds since 1970-01-01T00:00:00Z. */
  readonly timeS: Float64Array;
  readonly latDeg: Float64Array;
  readonly lonDeg: Float64Array;
  /** The height used for the beam, above mean sea level, and where it comes from. */
  readonly altitudeFt: Float64Array;
  readonly altitudeSource: AltitudeSource;
  /** Whether an altimeter's height was corrected for the air that the user stated. */
  readonly temperatureKnown: boolean;
  readonly receiver: Receiver;
  /** What the altimeter showed; null when not logged. */
  readonly altitudeIndicatedFt: Float64Array | null;
  readonly groundspeedKt: Float64Array;
  /** From positions over 5 s, never from a course column. NaN while standing still. */
  readonly trackTrueDeg: Float64Array;
  /** Up is positive. */
  readonly verticalSpeedFpm: Float64Array;
  /** Which of the columns above were worked out here and not read. */
  readonly derived: {
    readonly groundspeedKt: boolean;
    readonly trackTrueDeg: true;
    readonly verticalSpeedFpm: boolean;
  };
  /** `FIX_FLAG` bits. */
  readonly flags: Uint8Array;
  readonly medianIntervalS: number;
  /** Intervals longer than this are gaps. */
  readonly gapLimitS: number;
  readonly gaps: readonly Gap[];
  /** The other recorded quantities, cut to the same fixes. */
  readonly recorded: { readonly [Q in ExtraQuantity]?: Float64Array };
  /** Line of the file that each fix stands on. */
  readonly line: Uint32Array;
  readonly issues: readonly Issue[];
}

/** Which recorded column the beam's height was taken from. */
export type AltitudeSource =
  'geometric' | 'ellipsoid-less-geoid' | 'unnamed' | 'indicated' | 'pressure' | 'transponder';

/** An interval with no fixes, between fix `beforeIndex` and the next one. */
export interface Gap {
  readonly beforeIndex: number;
  readonly startS: number;
  readonly endS: number;
}
