/** What the text of a JSON file says, whichever way it is written; the text itself where that is no JSON. */
export function contentOf(text: string): string {
  try {
    return inOneOrder(JSON.parse(text));
  } catch {
    return text;
  }
}

/** As JSON, the keys of every group in the order of the alphabet. */
export function inOneOrder(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
