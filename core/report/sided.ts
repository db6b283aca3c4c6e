const SIDES = { localizer: ['right', 'left', 'on course'], glidepath: ['high', 'low', 'on path'] } as const;

/** A deviation as it is read aloud, "right 0.62" in fractions of full scale; nothing where it is not known. */
export function sided(fullScale: number | null, axis: keyof typeof SIDES): string {
  if (fullScale === null) return '';
  const [positive, negative, none] = SIDES[axis];
  const size = Math.abs(fullScale).toFixed(2);
  if (size === '0.00') return none;
  return `${fullScale > 0 ? positive : negative} ${size}`;
}
