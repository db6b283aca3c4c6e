/** What has to be said at the place where it matters; the words of a debrief as a whole are in `debrief/cautions`. */
export const PLACE_CAUTIONS = {
  needles: 'Computed from position and published data. The real needles may have differed.',
  level:
    'How one recorded path compares; this program’s own, no authority’s. Not a sign-off and not a minimum.',
  goingAround: 'Going around never lowers the level.',
  temperature: 'Shown to explain altimeter readings; apply corrections only as your rules require.',
} as const;
