/** A straight line by least squares: `y = atMean + slope (x − meanX)`. */
export interface StraightLine {
  readonly meanX: number;
  readonly atMean: number;
  readonly slope: number;
  /** Sum of the squares of x about its mean: what a slope is known by. */
  readonly spreadX: number;
}

/** Of two points or more at different x. */
export function straightLine(x: readonly number[], y: readonly number[]): StraightLine {
  const meanX = meanOver(x);
  const atMean = meanOver(y);
  const spreadX = x.reduce((sum, one) => sum + (one - meanX) ** 2, 0);
  const slope = x.reduce((sum, one, i) => sum + (one - meanX) * (y[i]! - atMean), 0) / spreadX;
  return { meanX, atMean, slope, spreadX };
}

/** Where a line is at x. */
export function onLineAt({ meanX, atMean, slope }: StraightLine, x: number): number {
  return atMean + slope * (x - meanX);
}

/** What of each y the line leaves. */
export function leftOf(line: StraightLine, x: readonly number[], y: readonly number[]): number[] {
  return y.map((one, i) => one - onLineAt(line, x[i]!));
}

function meanOver(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
