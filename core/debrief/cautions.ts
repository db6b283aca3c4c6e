/** Shown in every debrief: this may teach someone wrongly, and must never be flown by. */
export const CAUTIONS: readonly string[] = [
  'For training debrief only, never for navigation.',
  'Current charts, local regulations and a licensed instructor come first.',
  'Computed from recorded position and published data; the real needles may have differed. Not yet validated against recorded receiver needles.',
  'A height in a log is not a certified one.',
];
