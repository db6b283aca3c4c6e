/** Which of several buttons stands for what is shown. */
export function current(isCurrent: boolean): { 'aria-current'?: 'page' } {
  return isCurrent ? { 'aria-current': 'page' } : {};
}
