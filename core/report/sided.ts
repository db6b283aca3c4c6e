const SIDES = { localizer: ['right', 'left', 'on course'], glidepath: ['high', 'low', 'on path'] } as const;
export type Axis = keyof typeof SIDES;

/** A deviation as it is read aloud: "right 0.62" in fractions of full scale; nothing where it is not known. */
export function sided(fullScale: number | null, axis: Axis): string {
  return fullScale === null ? '' : toOneSide(fullScale, axis, 2);
}

/** The same in dots, of which so many make full scale: "right 1.2". */
export function sidedInDots(fullScale: number | null, axis: Axis, dots: number): string {
  return fullScale === null ? '' : toOneSide(fullScale * dots, axis, 1);
}

function toOneSide(value: number, axis: Axis, places: number): string {
  const [positive, negative, none] = SIDES[axis];
  const size = Math.abs(value).toFixed(places);
  if (Number(size) === 0) return none;
  return `${value > 0 ? positive : negative} ${size}`;
}
