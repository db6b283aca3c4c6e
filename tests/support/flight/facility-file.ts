interface Place {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationFt: number;
}

/** The contents of a `halfdot-facility/1` file, as the tests write them; lengths and angles as the names say. */
export interface FacilityFile {
  readonly format: 'halfdot-facility/1';
  readonly name: string;
  readonly ident: string;
  readonly frequencyMHz: number;
  readonly airportElevationFt: number;
  readonly runway: {
    readonly designator: string;
    readonly threshold: Place;
    readonly farEnd: Place;
    readonly widthFt: number;
    readonly touchdownZoneElevationFt: number;
  };
  readonly localizer: {
    readonly courseTrueDeg?: number;
    readonly courseMagneticDeg: number;
    readonly antenna?: Place;
    readonly antennaSetbackFt?: number;
    readonly courseWidthDeg?: number;
  };
  readonly glidepath: {
    readonly angleDeg: number;
    readonly thresholdCrossingHeightFt: number;
    readonly antenna?: Place;
    readonly fullScaleDeg?: number;
  };
  readonly minimums: { readonly decisionAltitudeFt: number; readonly rvrFt: number };
  readonly finalApproachFix: {
    readonly name: string;
    readonly distanceNm: number;
    readonly altitudeFt: number;
    readonly dmeNm?: number;
  };
  readonly missedApproach: { readonly climbToFt: number; readonly instructions: string };
  readonly magneticVariationDeg: number;
}
