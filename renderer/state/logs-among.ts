/** Of a folder, what may be a log; the rest would only be refused, file by file. */
export function logsAmong(files: FileList | null): File[] {
  return [...(files ?? [])].filter(({ name }) => /\.(?:csv|gpx|txt|log)$/i.test(name));
}
