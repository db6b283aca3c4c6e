/** How an approach was flown, as its debrief says. */
export const FLOWN_WORDS = {
  'hand-flown': 'flown by hand',
  coupled: 'flown coupled',
  'not-stated': 'not stated whether flown by hand or coupled',
} as const;
