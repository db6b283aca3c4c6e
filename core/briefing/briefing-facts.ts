import { bearingWords, decimal, variationWords } from '../facility/wording.ts';
import { readingFeet, roundTo } from '../report/reading-feet.ts';
import { whole } from '../units/whole.ts';
import type { BriefedFix, Briefing } from './briefing.ts';
import { altimeterWords, BLANK, DATUM_WORDS } from './words.ts';

/** One thing to be briefed: what, how much, and what goes with it. */
export interface BriefingFact {
  readonly label: string;
  readonly value: string;
  readonly remark: string;
}

/** What stands at the head of the sheet, in the order in which an approach is briefed. */
export function briefingFacts(briefing: Briefing): BriefingFact[] {
  return [
    courseFact(briefing),
    glidepathFact(briefing),
    runwayFact(briefing),
    fixFact(briefing),
    decisionFact(briefing),
    gatesFact(briefing),
  ];
}

function courseFact({ course }: Briefing): BriefingFact {
  const { trueDeg, magneticDeg, magneticFrom, variationDeg } = course;
  const from = {
    given: 'as entered',
    variation: `from variation ${variationWords(variationDeg ?? 0)}`,
    model: `from variation ${variationWords(variationDeg ?? 0)}, by the magnetic model today`,
  };
  const isWhole = magneticDeg !== null && Number.isInteger(magneticDeg);
  const value =
    magneticDeg === null ? 'magnetic not known' : `${bearingWords(magneticDeg, isWhole ? 0 : 1)}° magnetic`;
  const source = magneticFrom === null ? 'no variation is known' : `magnetic ${from[magneticFrom]}`;
  return { label: 'Course', value, remark: `${bearingWords(trueDeg, 1)}° true; ${source}` };
}

function glidepathFact({ glidepath }: Briefing): BriefingFact {
  const { angleDeg, gradientFtPerNm, thresholdCrossingHeightFt } = glidepath;
  return {
    label: 'Glidepath',
    value: `${angleDeg.toFixed(2)}°, ${whole(gradientFtPerNm)} ft/NM`,
    remark: `crosses the threshold at ${decimal(thresholdCrossingHeightFt)} ft`,
  };
}

function runwayFact({ facility }: Briefing): BriefingFact {
  const { runway, lengthFt, thresholdElevationFt, touchdownZoneElevationFt, airportElevationFt } = facility;
  const elevations = [
    `threshold ${whole(thresholdElevationFt)} ft`,
    `touchdown zone ${whole(touchdownZoneElevationFt)} ft`,
    ...(airportElevationFt === null ? [] : [`airport ${whole(airportElevationFt)} ft`]),
  ];
  return {
    label: `Runway ${runway}`,
    value: `${readingFeet(lengthFt)} ft long`,
    remark: elevations.join(', '),
  };
}

function fixFact(briefing: Briefing): BriefingFact {
  const { name, distanceNm, dmeNm, isAssumed } = briefing.fix;
  const value = [
    ...(name === null ? [] : [name]),
    `${distanceNm.toFixed(1)} NM`,
    ...(dmeNm === null ? [] : [`DME ${decimal(dmeNm)}`]),
  ].join(', ');
  const assumed = isAssumed ? 'assumed: no distance was entered; ' : '';
  return { label: 'Final approach fix', value, remark: assumed + fixHeights(briefing) };
}

function fixHeights({ fix, temperatureC }: Briefing): string {
  const shown = altimeterWords(fix, temperatureC);
  return [
    `path at ${readingFeet(fix.altitudeFt)} ft`,
    publishedWords(fix),
    ...(shown === null ? [] : [shown]),
  ].join('; ');
}

function publishedWords({ publishedAltitudeFt, pathAboveFt }: BriefedFix): string {
  if (publishedAltitudeFt === null || pathAboveFt === null) return 'no altitude was entered';
  const off = roundTo(10, pathAboveFt);
  const against =
    off === 0 ? 'alike' : `the path is ${whole(Math.abs(off))} ft ${off < 0 ? 'lower' : 'higher'}`;
  return `published ${whole(publishedAltitudeFt)} ft, ${against}`;
}

function decisionFact({ decision }: Briefing): BriefingFact {
  const label = 'Decision altitude';
  if (decision === null)
    return { label, value: `${BLANK} ft`, remark: `height ${BLANK} ft; fill in from the current chart` };
  const { altitudeFt, aboveTouchdownZoneFt, distanceNm } = decision;
  return {
    label,
    value: `${whole(altitudeFt)} ft`,
    remark: `${whole(aboveTouchdownZoneFt)} ft above the touchdown zone; on the path at ${distanceNm.toFixed(2)} NM`,
  };
}

function gatesFact({ gates: { datum, datumFt, gates } }: Briefing): BriefingFact {
  const heights = gates.map(({ heightFt }) => whole(heightFt)).join(' and ');
  const distances = gates.map(({ distanceNm }) => distanceNm.toFixed(1)).join(' and ');
  return {
    label: 'Gates, on the altimeter',
    value: gates.map(({ altitudeFt }) => `${whole(altitudeFt)} ft`).join(' and '),
    remark: `${heights} ft above the ${DATUM_WORDS[datum]} (${whole(datumFt)} ft); on the path at ${distances} NM`,
  };
}
