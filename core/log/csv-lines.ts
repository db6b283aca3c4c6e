/** Whether nothing but padding stands in cells. */
export function isBlank(cells: readonly string[]): boolean {
  return cells.every((cell) => /^[\0\s]*$/.test(cell));
}

/** Whether a row is a remark of the recorder. */
export function isComment(cells: readonly string[]): boolean {
  return /^[\0\s]*(?:#|\/\/)/.test(cells[0]!);
}
