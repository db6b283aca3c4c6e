/** A cell as RFC 4180 (section 2) quotes it; empty for what there is none of. */
export function csvCell(value: string | number | null): string {
  const text = value === null ? '' : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
