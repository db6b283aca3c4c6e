/** A title within a sentence: "Glidepath on final" as "glidepath on final", and "IAS below 4 NM" as it is. */
export function inSentence(title: string): string {
  return /^\p{Lu}\p{Lu}/u.test(title) ? title : title.slice(0, 1).toLowerCase() + title.slice(1);
}

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** What somebody improves in, within a sentence: some titles say what was met, and name nothing. */
export function topicOf({ id, title }: { readonly id: string; readonly title: string }): string {
  if (id === 'stability') return `being ${inSentence(title)}`;
  if (id === 'minimums') return 'minimums';
  return id === 'level' ? 'the level' : inSentence(title);
}
