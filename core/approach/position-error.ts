/**
 * How far beside the runway's edge a fix may lie and still be on it: the position error of a plain receiver
 * (8 m, GPS SPS Performance Standard 2020, table 3.8-3, second-hand) twice over, until each log brings its own.
 */
export const POSITION_ERROR_FT = 50;
