const HALF_FIT_S = 3;
/** Which heights of a pull-up are outliers of a straight line is for the fit to say: none, or those beyond so many rms. */
const OUTLIERS = 1.5;

/** Sink at a moment, ft/min, on the line of least squares through the heights of ± 3 s. */
export interface Sink {
  /** Fitted to all of them. */
  readonly plain: number;
  /** The lesser and the greater of that and of the line fitted once more without outliers. */
  readonly least: number;
  readonly most: number;
}

/** Sink by place in a column of heights of so many a second; a place is fitted when it is first asked for. */
export function sinkIn(heightFt: Float64Array, perSecond: number): (i: number) => Sink {
  const known: Sink[] = [];
  return (i) => (known[i] ??= sinkAt(heightFt, i, perSecond));
}

function sinkAt(heightFt: Float64Array, i: number, perSecond: number): Sink {
  const half = HALF_FIT_S * perSecond;
  const heights = heightFt.subarray(Math.max(0, i - half), i + half + 1);
  const first = lineThrough(heights, () => true);
  const off = (k: number): number => Math.abs(heights[k]! - first.y - first.slope * (k - first.x));
  const rms = Math.sqrt(heights.reduce((sum, _, k) => sum + off(k) ** 2, 0) / heights.length);
  const again = lineThrough(heights, (k) => off(k) <= OUTLIERS * rms);
  const [plain, without] = [first, again].map(({ slope }) => -60 * perSecond * slope) as [number, number];
  return { plain, least: Math.min(plain, without), most: Math.max(plain, without) };
}

/** Slope of the line of least squares through the values that count, and the middle that it passes through. */
function lineThrough(
  values: Float64Array,
  counts: (k: number) => boolean,
): { x: number; y: number; slope: number } {
  let [n, x, y] = [0, 0, 0];
  values.forEach((value, k) => {
    if (!counts(k)) return;
    n++;
    x += k;
    y += value;
  });
  x /= n;
  y /= n;
  let [top, bottom] = [0, 0];
  values.forEach((value, k) => {
    if (!counts(k)) return;
    top += (k - x) * (value - y);
    bottom += (k - x) ** 2;
  });
  return { x, y, slope: top / bottom };
}
