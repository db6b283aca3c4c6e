/** How a facility or a standard is told apart that came with a kept debrief, and is not what it is here today. */
export const KEPT_MARK = 'as kept in the library';
