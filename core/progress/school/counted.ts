/** "1 approach", "3 approaches". */
export function counted(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}

export function approachesOf(count: number): string {
  return counted(count, 'approach', 'approaches');
}
