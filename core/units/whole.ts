/** 1234.5 as "1,235": whole, thousands parted, a true minus sign, no locale asked. */
export function whole(value: number): string {
  const rounded = Math.round(value);
  const parted = String(Math.abs(rounded)).replace(/\B(?=(\d{3})+$)/g, ',');
  return rounded < 0 ? `−${parted}` : parted;
}
