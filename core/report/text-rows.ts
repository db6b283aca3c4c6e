const LABEL_WIDTH = 24;
const VALUE_WIDTH = 24;

/** One line of a printed page: what, how much, and a remark. */
export function textRow(label: string, value: string, remark = ''): string {
  return `  ${label.padEnd(LABEL_WIDTH)}${value.padEnd(VALUE_WIDTH)}  ${remark}`.trimEnd();
}

/** One line of a printed table: a label, and values set to the right of columns of one width. */
export function textCells(label: string, values: readonly (string | number)[], columnWidth: number): string {
  return `  ${label.padEnd(LABEL_WIDTH)}${values.map((value) => String(value).padStart(columnWidth)).join('')}`;
}

/** Breaks a text into lines of at most so many characters, between words where it can. */
export function textLines(text: string, width: number): string[] {
  const words = text.match(new RegExp(`\\S{1,${width}}`, 'g')) ?? [];
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    const fits = last !== undefined && last.length + 1 + word.length <= width;
    if (fits) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Columns of a page that is read on a screen and printed. */
const PAGE_WIDTH = 100;

/** The lines of a paragraph. */
export function pageLines(text: string): string[] {
  return textLines(text, PAGE_WIDTH);
}

/** The lines of a paragraph set in from the left: the first after `lead`, the others under it. */
export function indentedLines(lead: string, text: string): string[] {
  const margin = ' '.repeat(lead.length);
  return textLines(text, PAGE_WIDTH - lead.length).map((line, i) => (i === 0 ? lead : margin) + line);
}
