/** Approaches at a facility that was drafted from a landing, with values that nobody has confirmed. */
const BY_DRAFT = `
  SELECT approaches.id FROM facilities
  JOIN debriefs ON debriefs.facility_sha256 = facilities.sha256
  JOIN approaches ON approaches.debrief_id = debriefs.id
  WHERE CASE WHEN json_valid(facilities.content)
    THEN json_array_length(facilities.content, '$.origin.landing.unconfirmed') > 0 END`;

/**
 * Version 5: what a draft judged that nobody has confirmed stands in no progress. What was copied out of the debriefs by
 * one goes, and is made from their documents when it is asked for.
 */
export const DRAFTS = `
ALTER TABLE approach_facts ADD COLUMN by_draft INTEGER NOT NULL DEFAULT 0;
DELETE FROM measures WHERE approach_id IN (${BY_DRAFT});
DELETE FROM approach_facts WHERE approach_id IN (${BY_DRAFT});
`;
