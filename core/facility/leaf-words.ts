/** What values are called in sentences, by their path. */
const NAMES: Readonly<Record<string, string>> = {
  ident: 'ident',
  frequencyMHz: 'localizer frequency',
  airportElevationFt: 'elevation of the airport',
  'runway.designator': 'designator',
  'runway.threshold': 'threshold',
  'runway.threshold.elevationFt': 'elevation of the threshold',
  'runway.farEnd': 'far end',
  'runway.farEnd.elevationFt': 'elevation of the far end',
  'runway.trueBearingDeg': 'true bearing of the runway',
  'runway.lengthFt': 'length of the runway',
  'runway.widthFt': 'width of the runway',
  'runway.touchdownZoneElevationFt': 'elevation of the touchdown zone',
  'localizer.courseTrueDeg': 'true course of the localizer',
  'localizer.courseMagneticDeg': 'magnetic course of the localizer',
  'localizer.antenna': 'localizer antenna',
  'localizer.antenna.elevationFt': 'elevation of the localizer antenna',
  'localizer.antennaSetbackFt': 'setback of the localizer antenna',
  'localizer.courseWidthDeg': 'course width',
  'glidepath.angleDeg': 'glidepath angle',
  'glidepath.thresholdCrossingHeightFt': 'threshold crossing height',
  'glidepath.antenna': 'glidepath antenna',
  'glidepath.antenna.elevationFt': 'elevation of the glidepath antenna',
  'glidepath.fullScaleDeg': 'full scale of the glidepath',
  'minimums.decisionAltitudeFt': 'decision altitude',
  'minimums.rvrFt': 'runway visual range',
  'finalApproachFix.name': 'name of the final approach fix',
  'finalApproachFix.distanceNm': 'distance of the final approach fix',
  'finalApproachFix.altitudeFt': 'altitude at the final approach fix',
  'finalApproachFix.dmeNm': 'DME reading at the final approach fix',
  'missedApproach.climbToFt': 'altitude of the missed approach',
  'missedApproach.instructions': 'instructions for the missed approach',
  magneticVariationDeg: 'magnetic variation',
};

/** "threshold crossing height" of `glidepath.thresholdCrossingHeightFt`; the path itself where it has no name. */
export function leafName(path: string): string {
  return NAMES[path] ?? path;
}
