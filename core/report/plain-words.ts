/** A duration as a person says it: "48 s", "6 min 5 s", "1 h 2 min". */
export function duration(seconds: number): string {
  const s = Math.round(seconds);
  if (s < 60) return `${s} s`;
  if (s < 3600) return s % 60 === 0 ? `${s / 60} min` : `${Math.floor(s / 60)} min ${s % 60} s`;
  const minutes = Math.round(s / 60);
  return minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

/** 4.6 as "005°"; north is 360°, as pilots call it. */
export function directionWords(directionDeg: number): string {
  return `${String(Math.round(directionDeg) % 360 || 360).padStart(3, '0')}°`;
}

/** "2026-05-04T14:02:11.5Z" as day and clock: "4 May 2026" and "14:02:11". */
export function dayAndClock(utc: string): { day: string; clock: string } {
  const [, year, month, date, clock] = /^([+-]?\d+)-(\d\d)-(\d\d)T(\d\d:\d\d:\d\d)/.exec(utc)!;
  return { day: `${Number(date)} ${MONTHS[Number(month) - 1]!} ${year!}`, clock: clock! };
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
