/** When a log was opened, as one says it, in the time of this machine: "opened today at 14:05". */
export function openedWords(openedUtc: string, now: Date): string {
  const opened = new Date(openedUtc);
  const time = `${two(opened.getHours())}:${two(opened.getMinutes())}`;
  const days = Math.round((midnight(now) - midnight(opened)) / 86_400_000);
  if (days === 0) return `opened today at ${time}`;
  if (days === 1) return `opened yesterday at ${time}`;
  return `opened ${opened.getFullYear()}-${two(opened.getMonth() + 1)}-${two(opened.getDate())} at ${time}`;
}

/** The day alone, as if it were one of UTC: there every day has 24 hours. */
function midnight(moment: Date): number {
  return Date.UTC(moment.getFullYear(), moment.getMonth(), moment.getDate());
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
