import type { Aerodrome } from './aerodrome.ts';
import { aerodromeGeometry } from './aerodrome-geometry.ts';
import { airportStart, joiningName, REGION } from './airport-start.ts';
import { figures, type Field } from './written-record.ts';

/** The legs of one procedure: in to the fix, down to the threshold, up again, to the hold. */
export function legFields(aerodrome: Aerodrome): Field[][] {
  const { ident, facility, hasGlideslope, hasDme, holdFix } = aerodrome;
  const { runway, finalApproachFix, missedApproach, glidepath, magneticVariationDeg } = facility;
  const { courseTrueDeg } = aerodromeGeometry(aerodrome);
  const course = figures((courseTrueDeg - magneticVariationDeg + 360) % 360, 4, 10);
  const kind = hasGlideslope ? 'I' : 'L';
  const crossingFt = runway.threshold.elevationFt + glidepath.thresholdCrossingHeightFt;
  const fixFt = figures(finalApproachFix.altitudeFt, 5);
  const leg = (sequence: number, fields: readonly Field[]): Field[] => [
    ...airportStart(ident, 'F', `${kind}${runway.designator}`),
    [20, kind],
    [27, figures(sequence, 3)],
    [39, '0'],
    [117, '0 NS'],
    ...fields,
  ];
  const onLocalizer = (dmeNm: number | undefined): Field[] => [
    [51, facility.ident],
    [55, REGION],
    [79, 'PI'],
    ...(hasDme && dmeNm !== undefined ? [[67, figures(dmeNm, 4, 10)] as const] : []),
  ];
  const to = (name: string, section: string, description: string): Field[] => [
    [30, name],
    [35, `${REGION}${section}`],
    [40, description],
  ];
  const { name, distanceNm, dmeNm } = finalApproachFix;
  return [
    leg(10, [
      ...to(joiningName(name), 'PC', 'E  I'),
      [48, 'IF'],
      ...onLocalizer(dmeNm === undefined ? undefined : dmeNm + 5),
      [83, `${hasGlideslope ? 'J' : '+'} ${fixFt}${hasGlideslope ? fixFt : ''}`],
    ]),
    leg(20, [
      ...to(name, 'PC', 'E  F'),
      [48, 'CF'],
      ...onLocalizer(dmeNm),
      [71, `${course}0050`],
      [83, `${hasGlideslope ? 'H' : '+'} ${fixFt}${hasGlideslope ? fixFt : ''}`],
    ]),
    leg(30, [
      ...to(`RW${runway.designator}`, 'PG', 'GY M'),
      [48, 'CF'],
      ...onLocalizer(dmeNm === undefined ? undefined : dmeNm - distanceNm),
      [71, `${course}${figures(distanceNm, 4, 10)}`],
      [85, figures(crossingFt, 5)],
      [103, figures(-glidepath.angleDeg, 4, 100)],
    ]),
    leg(40, [
      [40, '  M '],
      [48, 'CA'],
      [71, course],
      [83, '+'],
      [85, figures(crossingFt + 400, 5)],
    ]),
    leg(50, [...to(holdFix.name, 'EA', 'EY'), [44, 'L'], [48, 'DF']]),
    leg(60, [
      ...to(holdFix.name, 'EA', 'EE'),
      [44, 'L'],
      [48, 'HM'],
      [71, `${course}T010`],
      [83, `+ ${figures(missedApproach.climbToFt, 5)}`],
    ]),
  ];
}
