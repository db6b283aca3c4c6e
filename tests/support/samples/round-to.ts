/** Rounds a position as a chart would give it. Seven decimals of a degree are a centimetre. */
export function roundTo(
  decimals: number,
  place: { latDeg: number; lonDeg: number },
): { latDeg: number; lonDeg: number } {
  return { latDeg: Number(place.latDeg.toFixed(decimals)), lonDeg: Number(place.lonDeg.toFixed(decimals)) };
}
