/**
 * How little may decide. A needle that touches its limit, a height that is sunk to and no lower, a level flight that
 * sinks by a foot: there a log's last digit says which of several moments it was, and each of them is right. Each rule
 * is therefore also read a hair wider and a hair narrower.
 */
export interface Hair {
  /** Of a height against a fixed one, and of the needle of the glidepath. */
  readonly heightFt: number;
  /** Between two heights of one log, within a minute. */
  readonly stepFt: number;
  /** To the side: the needle of the localizer. */
  readonly sideFt: number;
  readonly angleDeg: number;
  readonly sinkFpm: number;
  /** Of a hold. */
  readonly holdS: number;
}

/** Of a log without errors: whole feet, and tenths of a metre to the side. */
export const ROUNDED: Hair = {
  heightFt: 0.6,
  stepFt: 1,
  sideFt: 1,
  angleDeg: 0.2,
  sinkFpm: 20,
  holdS: 0.1,
};

/** Three standard deviations of an augmented receiver in height and to the side, and a panel altimeter's lag. */
export const AUGMENTED_HAIR: Hair = {
  heightFt: 9,
  stepFt: 4,
  sideFt: 5,
  angleDeg: 1,
  sinkFpm: 40,
  holdS: 1,
};

/** A rule read a hair wider, as it stands, and a hair narrower. */
export const READINGS = { wider: 1, asItStands: 0, narrower: -1 } as const;
