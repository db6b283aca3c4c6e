import type { Severity } from '../issue/issue.ts';

/** Everything that reading a log can have to say: how severe it is, and when it is said. */
export const LOG_ISSUES = {
  // The file is no track log.
  'file-empty': ['refusal', 'the file holds nothing, or blanks and NULs only'],
  'file-is-picture': ['refusal', 'its first bytes are those of a picture'],
  'file-is-spreadsheet': ['refusal', 'it is a workbook of a spreadsheet program'],
  'file-is-archive': ['refusal', 'it is a packed archive'],
  'file-is-document': ['refusal', 'it is a PDF'],
  'file-is-web-page': ['refusal', 'it is HTML'],
  'file-encoding': ['refusal', 'it is UTF-16 without a byte-order mark'],
  'not-a-track-log': ['refusal', 'it is another kind of data, or text in which no line names known columns'],
  // It is one, and cannot be used.
  'no-rows': ['refusal', 'it has a header but no rows of data, or no track points'],
  'no-position': ['refusal', 'no column holds latitude or longitude'],
  'no-time': ['refusal', 'no column holds a time'],
  'no-altitude': ['refusal', 'no column, or no row, holds a height of the aircraft'],
  'no-usable-rows': ['refusal', 'every row was left out; the commonest reason is told'],
  'position-swapped': ['refusal', 'most latitudes go beyond 90 while the longitudes do not'],
  'line-too-long': ['refusal', 'a line is longer than a million characters'],
  'xml-doctype': ['refusal', 'the XML declares a document type, as bombs of entities do'],
  'xml-too-deep': ['refusal', 'the XML is nested more than 32 levels deep'],
  'xml-text-too-long': ['refusal', 'the XML holds a text, an attribute or a comment over 64 kB'],
  'xml-damaged-at-start': ['refusal', 'the XML is not well-formed before its first fix'],
  // What the caller asked for.
  cancelled: ['refusal', 'the job was stopped'],
  'time-zone-invalid': ['refusal', 'the time zone of the settings is not known'],
  'unit-unknown': ['refusal', 'the settings state a unit that is not known'],
  'unit-unfit': ['refusal', 'the settings state a unit that the column cannot be in'],
  // Rows and values.
  'xml-not-well-formed': ['warning', 'the XML is damaged: only the fixes before that are used'],
  'row-under-other-header': ['warning', 'rows under a second header with other columns are left out'],
  'row-without-position': ['caution', 'rows without a usable position are left out'],
  'row-without-time': ['caution', 'rows without a usable time are left out'],
  'row-too-short': ['caution', 'rows with too few cells are left out'],
  'row-too-long': ['caution', 'rows with more cells than the header names are left out'],
  'row-cut-short': ['caution', 'the last row ends in the middle and is left out'],
  'quote-unclosed': ['caution', 'lines with a quote that is never closed are left out'],
  'value-unreadable': ['caution', 'a column holds text that is no number: unknown there'],
  'value-marked-invalid': ['note', 'a column holds a value that cannot be, such as −1 kt: unknown there'],
  'height-of-2d-fix': ['note', 'the height of a two-dimensional fix is taken as unknown'],
  'longitude-wrapped': ['note', 'longitudes from 0 to 360 were brought to −180 to 180'],
  // What was assumed.
  'altitude-kind-assumed': [
    'caution',
    'a header says "altitude" and not which: taken as above mean sea level',
  ],
  'altitude-kind-unused': ['caution', 'a kind of altitude was stated, and no column of open kind is there'],
  'gpx-ele-assumed-msl': ['note', 'GPX does not say what its heights are above: taken as mean sea level'],
  'unit-assumed': ['caution', 'a header names no unit, or none that fits: the usual one was taken'],
  'unit-unused': ['caution', 'a unit was stated for a column that is not there or not read in a unit'],
  'unit-over-header': [
    'note',
    'a unit was stated where the header names another that fits: the user is believed',
  ],
  'unit-from-positions': ['note', 'a groundspeed names no unit: the positions showed it'],
  'needle-scale-assumed': [
    'caution',
    'a needle in dots never reaches its stop: two dots taken for full scale',
  ],
  'needle-scale-unknown': ['caution', 'a recorded needle has no known scale and is not used'],
  'date-order-assumed': ['caution', 'the dates can be read in more than one order'],
  'time-zone-unknown': ['caution', 'the times do not name their offset from UTC: taken as UTC'],
  'time-without-date': ['caution', 'the file has times of day and no date: shown as 1970-01-01'],
  'time-elapsed': ['caution', 'the file counts from its own start, which is not known: shown as 1970-01-01'],
} as const satisfies Readonly<Record<string, readonly [Severity, string]>>;

export type LogIssueCode = keyof typeof LOG_ISSUES;
export type LogRefusalCode = {
  [C in LogIssueCode]: (typeof LOG_ISSUES)[C][0] extends 'refusal' ? C : never;
}[LogIssueCode];
