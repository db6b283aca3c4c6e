/** A field of a record: the column that it begins in, counted from 1, and its text. */
export type Field = readonly [column: number, text: string];

/** A record of 132 columns with these fields; the number and the cycle of its last change go behind them. */
export function writtenRecord(fields: readonly Field[], number: number, cycle: string): string {
  const columns = Array.from({ length: 132 }, () => ' ');
  for (const [column, text] of [...fields, [124, figures(number, 5)] as const, [129, cycle] as const])
    for (const [at, letter] of [...text].entries()) columns[column - 1 + at] = letter;
  return columns.join('');
}

/** 46.4 as `0464` with a scale of 10 and four figures. */
export function figures(value: number, width: number, scale = 1): string {
  const whole = Math.round(Math.abs(value) * scale);
  const sign = value < 0 ? '-' : '';
  return `${sign}${String(whole).padStart(width - sign.length, '0')}`;
}

/** `S31120000W016240000`: degrees, minutes, seconds and hundredths of them. */
export function positionText({ latDeg, lonDeg }: { latDeg: number; lonDeg: number }): string {
  return `${latDeg < 0 ? 'S' : 'N'}${angleText(latDeg, 2)}${lonDeg < 0 ? 'W' : 'E'}${angleText(lonDeg, 3)}`;
}

function angleText(angleDeg: number, width: number): string {
  const hundredths = Math.round(Math.abs(angleDeg) * 360_000);
  const degrees = Math.floor(hundredths / 360_000);
  const minutes = Math.floor((hundredths % 360_000) / 6000);
  return `${figures(degrees, width)}${figures(minutes, 2)}${figures(hundredths % 6000, 4)}`;
}

/** `W0236` for −23.6. */
export function variationText(eastDeg: number): string {
  return `${eastDeg < 0 ? 'W' : 'E'}${figures(Math.abs(eastDeg), 4, 10)}`;
}
