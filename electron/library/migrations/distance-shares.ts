/**
 * Version 5: the share inside a limit is of the distance flown. Those that are kept are of time, and the debriefs that
 * they were copied out of tell no distance.
 */
export const DISTANCE_SHARES = `
ALTER TABLE measures ADD COLUMN why_no_share TEXT;

UPDATE measures SET inside_share = NULL, why_no_share = 'debriefed by a version that told no distance'
WHERE inside_share IS NOT NULL;
`;
