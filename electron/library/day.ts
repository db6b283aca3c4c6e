/** Whether a text is a day of the calendar, written as 2026-05-01. */
export function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(+day) && day.toISOString().startsWith(text);
}
