/** Keeps a unit on the line of its number, which a narrow page would often part. */
export function unbroken(text: string): string {
  return text.replaceAll(/(\d) (?=ft\b|NM\b|kt\b|°C)/g, '$1\u00A0');
}
