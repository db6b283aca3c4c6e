/** What a spreadsheet takes for a formula, also in its wide forms (common practice, no source). */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;

/**
 * A cell as RFC 4180 (section 2) quotes it; empty for what there is none of. A text that a spreadsheet would run gets
 * an apostrophe before it: names and titles are anybody's. Numbers stay as they are.
 */
export function csvCell(value: string | number | null): string {
  const text = value === null ? '' : String(value);
  const safe = typeof value === 'string' && FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
