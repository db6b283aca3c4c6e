/** Keys and values in braces, those that no form knows among them. */
export type Group = Readonly<Record<string, unknown>>;

export function isGroup(value: unknown): value is Group {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
