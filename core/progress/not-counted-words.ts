/** Why approaches stand in no figure though they were debriefed, behind how many there are. */
export const BY_DRAFT =
  'not counted: the facility was an unconfirmed draft. Once its values are confirmed and the log is debriefed by it again ' +
  '(in a command: import with --again yes), it counts.';
export const UNIT_DOUBTED =
  'not counted: the heights seem to be in another unit than they were read in. Once the unit is stated and the log is debriefed ' +
  'with it again (in a command: import with --unit and --again yes), it counts.';
