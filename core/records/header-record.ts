/** What the lines before the records say of the file; null where they do not. */
export interface RecordsHeader {
  /** As `2609`. */
  cycle: string | null;
  /** ISO date from which the file is in force, in its own words. */
  effectiveDay: string | null;
  /** How many records there should be. */
  recordCount: number | null;
}

const MONTHS = ['JAN', 'FEB', 'MAR', 'APR', 'MAY', 'JUN', 'JUL', 'AUG', 'SEP', 'OCT', 'NOV', 'DEC'];

/**
 * Takes from a header line what it tells. `HDR01` has the count of records in columns 29 to 35 and the cycle in 36 to
 * 39; another line of the FAA's says "VOLUME 2609 EFFECTIVE 03 SEP 2026". Both from published lines; see the tests.
 */
export function readHeader(line: string, header: RecordsHeader): void {
  if (line.startsWith('HDR01')) {
    const count = line.slice(28, 35);
    const cycle = line.slice(35, 39);
    if (/^\d{7}$/.test(count)) header.recordCount ??= Number(count);
    if (/^\d{4}$/.test(cycle)) header.cycle ??= cycle;
  }
  const volume = /\bVOLUME +(\d{4})\b/.exec(line)?.[1];
  if (volume !== undefined) header.cycle ??= volume;
  const effective = /\bEFFECTIVE +(\d{2}) ([A-Z]{3}) (\d{4})\b/.exec(line);
  if (effective === null) return;
  const month = MONTHS.indexOf(effective[2]!) + 1;
  const day = Number(effective[1]);
  if (month > 0 && day >= 1 && day <= 31)
    header.effectiveDay ??= `${effective[3]!}-${String(month).padStart(2, '0')}-${effective[1]!}`;
}
