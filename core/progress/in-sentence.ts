/** A title within a sentence: "Glidepath on final" as "glidepath on final", and "IAS below 4 NM" as it is. */
export function inSentence(title: string): string {
  return /^\p{Lu}\p{Lu}/u.test(title) ? title : title.slice(0, 1).toLowerCase() + title.slice(1);
}

/** What somebody improves in, within a sentence: some titles say what was met, and name nothing. */
export function topicOf({ id, title }: { readonly id: string; readonly title: string }): string {
  if (id === 'stability') return `being ${inSentence(title)}`;
  if (id === 'minimums') return 'minimums';
  return id === 'level' ? 'the level' : inSentence(title);
}
