import type { Aerodrome } from './aerodrome.ts';
import { aerodromeGeometry } from './aerodrome-geometry.ts';
import { airportStart, AREA, joiningName, REGION } from './airport-start.ts';
import { legFields } from './leg-fields.ts';
import { figures, positionText, variationText, type Field } from './written-record.ts';

/** Those of its records that stand with the airport, as files sort them. */
export function aerodromeRecords(aerodrome: Aerodrome): Field[][] {
  return [
    airportFields(aerodrome),
    ...waypointFields(aerodrome),
    ...legFields(aerodrome),
    ...runwayFields(aerodrome),
    localizerFields(aerodrome),
  ];
}

/** Those that stand before all airports: the localizer's DME, and the waypoint that the missed approach ends at. */
export function recordsElsewhere({ ident, facility, hasDme, holdFix }: Aerodrome) {
  const dme: Field[] = [
    [1, `S${AREA}D ${ident}${REGION}`],
    [14, facility.ident],
    [20, REGION],
    [22, '0'],
    [23, figures(facility.frequencyMHz, 5, 100)],
    [28, ' ITW'],
    [52, facility.ident],
    [56, positionText(facility.runway.threshold)],
    [75, variationText(facility.magneticVariationDeg)],
  ];
  const waypoint: Field[] = [
    [1, `S${AREA}EAENRT`],
    [14, holdFix.name],
    [20, REGION],
    [22, '0'],
    [27, 'C'],
    [33, positionText(holdFix)],
    [75, variationText(facility.magneticVariationDeg)],
    [99, holdFix.name],
  ];
  return { navaids: hasDme ? [dme] : [], waypoints: [waypoint] };
}

function airportFields({ ident, name, facility }: Aerodrome): Field[] {
  return [
    ...airportStart(ident, 'A', ''),
    [22, '0'],
    [28, '065YHN'],
    [33, positionText(facility.runway.threshold)],
    [52, variationText(facility.magneticVariationDeg)],
    [57, figures(facility.airportElevationFt, 5)],
    [81, 'C    M'],
    [94, name.toUpperCase()],
  ];
}

function waypointFields(aerodrome: Aerodrome): Field[][] {
  const { ident, facility } = aerodrome;
  const { fix, joining } = aerodromeGeometry(aerodrome);
  const { name } = facility.finalApproachFix;
  const places = [
    [name, fix],
    [joiningName(name), joining],
  ] as const;
  return places.map(([waypoint, place]) => [
    ...airportStart(ident, 'C', waypoint),
    [20, REGION],
    [22, '0'],
    [27, 'C'],
    [33, positionText(place)],
    [75, variationText(facility.magneticVariationDeg)],
    [99, waypoint],
  ]);
}

function runwayFields(aerodrome: Aerodrome): Field[][] {
  const { facility, displacedFt, hasGlideslope } = aerodrome;
  const { runway, glidepath, magneticVariationDeg } = facility;
  const { oppositeThreshold, runwayBearingTrueDeg } = aerodromeGeometry(aerodrome);
  const number = Number.parseInt(runway.designator, 10);
  const magneticDeg = (runwayBearingTrueDeg - magneticVariationDeg + 360) % 360;
  const here: Field[] = [
    ...runwayEnd(aerodrome, runway.designator, magneticDeg),
    [33, positionText(runway.threshold)],
    [67, figures(runway.threshold.elevationFt, 5)],
    [72, figures(displacedFt.here, 4)],
    [76, figures(glidepath.thresholdCrossingHeightFt, 2)],
    [81, hasGlideslope ? 'I' : 'V'],
    [82, facility.ident],
    [86, hasGlideslope ? '1' : '0'],
  ];
  const opposite: Field[] = [
    ...runwayEnd(aerodrome, figures(((number + 17) % 36) + 1, 2), (magneticDeg + 180) % 360),
    [33, positionText(oppositeThreshold)],
    [67, figures(runway.farEnd.elevationFt, 5)],
    [72, figures(displacedFt.opposite, 4)],
    [76, '45'],
    [81, 'V'],
  ];
  return [here, opposite];
}

function runwayEnd(aerodrome: Aerodrome, designator: string, magneticDeg: number): Field[] {
  const { pavementFt } = aerodromeGeometry(aerodrome);
  return [
    ...airportStart(aerodrome.ident, 'G', `RW${designator}`),
    [22, '0'],
    [23, figures(pavementFt, 5)],
    [28, figures(magneticDeg, 4, 10)],
    [61, '+00000'],
    [78, figures(aerodrome.facility.runway.widthFt, 3)],
  ];
}

function localizerFields(aerodrome: Aerodrome): Field[] {
  const { ident, facility, hasGlideslope } = aerodrome;
  const { runway, glidepath, magneticVariationDeg } = facility;
  const geometry = aerodromeGeometry(aerodrome);
  const magneticDeg = (geometry.courseTrueDeg - magneticVariationDeg + 360) % 360;
  const glideslope: Field[] = [
    [56, positionText(geometry.glidepathAntenna)],
    [80, figures(geometry.glidepathAlongFt, 4)],
    [88, figures(glidepath.angleDeg, 3, 100)],
    [96, figures(glidepath.thresholdCrossingHeightFt, 2)],
    [98, figures(geometry.glidepathElevationFt, 5)],
  ];
  return [
    ...airportStart(ident, 'I', facility.ident),
    [18, hasGlideslope ? '1' : '0'],
    [22, '0'],
    [23, figures(facility.frequencyMHz, 5, 100)],
    [28, `RW${runway.designator}`],
    [33, positionText(geometry.antenna)],
    [52, figures(magneticDeg, 4, 10)],
    [75, figures(geometry.antennaPastEndFt, 4)],
    [84, figures(geometry.courseWidthDeg, 4, 100)],
    [91, variationText(magneticVariationDeg)],
    ...(hasGlideslope ? glideslope : []),
  ];
}
