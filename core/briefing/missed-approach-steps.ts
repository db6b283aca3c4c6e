/** Where one instruction ends and the next begins; a full stop only behind a word, and before a capital. */
const STEP_ENDS = [/\s*\n\s*/, /;\s*/, /(?<=\w{2}\.)\s+(?=[A-Z])/, /,?\s+(?:and\s+)?then,?\s+/i];

/** The published missed approach, one instruction a step, in its own words but for the "then" between them. */
export function missedApproachSteps(instructions: string): string[] {
  return STEP_ENDS.reduce((parts, end) => parts.flatMap((part) => part.split(end)), [instructions])
    .map((part) =>
      part
        .trim()
        .replace(/^(?:and\s+)?then,?\s+/i, '')
        .replace(/[.,]+$/, ''),
    )
    .filter((part) => part !== '')
    .map((part) => part[0]!.toUpperCase() + part.slice(1));
}
