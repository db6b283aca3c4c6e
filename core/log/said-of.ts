/** What the user says under a header; headers come from strangers and may be called "constructor". */
export function saidOf<T>(said: Readonly<Record<string, T>> | undefined, header: string): T | undefined {
  return said !== undefined && Object.hasOwn(said, header) ? said[header] : undefined;
}
