import type { Issue } from '../../core/issue/issue.ts';

const WORDS: Readonly<Record<Issue['severity'], string>> = {
  refusal: 'Cannot be used',
  warning: 'Warning',
  caution: 'Caution',
  note: 'Note',
};

/** One line an issue, for standard error. */
export function issueLine({ severity, message, firstLine, tip }: Issue): string {
  const place = firstLine === null || /\bline \d/.test(message) ? '' : ` (first on line ${firstLine})`;
  return `${WORDS[severity]}: ${message}${place}${tip ? ` ${tip}` : ''}`;
}
