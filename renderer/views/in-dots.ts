const SIDES = { localizer: ['right', 'left', 'on course'], glidepath: ['high', 'low', 'on path'] } as const;

/** A fraction of full scale as it is said aloud: "right 0.6", in dots of a display with two or five to full scale. */
export function inDots(fullScale: number, axis: keyof typeof SIDES, dots: 2 | 5): string {
  const [positive, negative, none] = SIDES[axis];
  const size = Math.abs(fullScale * dots).toFixed(1);
  if (Number(size) === 0) return none;
  return `${fullScale > 0 ? positive : negative} ${size}`;
}
