/** 17.1 as "17.1", 38 as "38", 38.06 as "38.06": two places at most, none that says nothing, no locale asked. */
export function decimal(value: number): string {
  return value.toFixed(2).replace(/\.?0+$/, '');
}
