/** "12", "11.6": at most so many decimals, and none that say nothing. */
export function decimal(value: number, decimals = 1): string {
  return String(Number(value.toFixed(decimals)));
}

/** A bearing as pilots write it: three figures, 360 for north ("007", "359.7"). */
export function bearingWords(bearingDeg: number, decimals = 0): string {
  const rounded = Number(bearingDeg.toFixed(decimals)) % 360;
  const shown = (rounded === 0 ? 360 : rounded).toFixed(decimals);
  return shown.padStart(decimals > 0 ? decimals + 4 : 3, '0');
}

/** "8.5 east". */
export function variationWords(variationDeg: number): string {
  const rounded = decimal(Math.abs(variationDeg));
  return rounded === '0' ? '0' : `${rounded} ${variationDeg < 0 ? 'west' : 'east'}`;
}
