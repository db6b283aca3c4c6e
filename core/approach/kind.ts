import { firstEstablishedS, triedForAMinute, withinLocalizer } from './established.ts';
import { at, type Flown } from './flown.ts';
import { findGlidepathIntercept } from './glidepath-intercept.ts';
import { isInbound, recordBeginsWith, type Pass } from './passes.ts';

/** Established at this distance or farther: an approach by instruments (design, section 7). */
const ESTABLISHED_BEYOND_NM = 3;
/** A final shorter than this is a circuit's, and none that a localizer was used for. Ours. */
const SHORTEST_FINAL_NM = 1.5;
const HELD_INSIDE_NM = 4;
const HELD_FULL_SCALE = 0.5;
/** Left earlier: held within ¼ scale inside 10 NM, and lower by 300 ft than at the glidepath's intercept. */
const LEFT_INSIDE_NM = 10;
const LEFT_FULL_SCALE = 0.25;
const LOWER_BY_FT = 300;

/** What a pass is; `none` when it is nothing to be listed. `why` tells why it is no approach that can be graded. */
export type Verdict =
  | { readonly kind: 'approach' }
  | { readonly kind: 'visual-final' | 'localizer-pass' | 'none'; readonly why: string };

/** Tells approaches from passes (design, section 7). */
export function kindOf(flown: Flown, pass: Pass, fixS: number | null): Verdict {
  const establishedS = firstEstablishedS(flown, pass);
  const establishedNm = establishedS === null ? null : distanceNmAt(flown, establishedS);
  const inTime = settledInTime(flown, establishedS);
  if (!descended(flown, pass)) {
    const why = 'it did not descend along the glidepath';
    return { kind: inTime ? 'localizer-pass' : 'none', why };
  }
  if (inTime) {
    if (heldCloseIn(flown, pass, establishedS!) || leftLate(flown, pass, establishedS!))
      return { kind: 'approach' };
    return { kind: 'localizer-pass', why: 'it left the localizer before the last part of final' };
  }
  if (onLocalizerAtFix(flown, fixS) && triedForAMinute(flown, pass)) return { kind: 'approach' };
  if (establishedNm === null) return { kind: 'none', why: 'it never settled on the localizer' };
  const joined = joinedWords(flown, pass, establishedS!);
  if (establishedNm >= SHORTEST_FINAL_NM) return { kind: 'visual-final', why: joined };
  const isSeen = recordBeginsWith(flown, pass) === null;
  return { kind: 'none', why: isSeen ? `${joined}, as a circuit does` : joined };
}

/** What begins on the localizer was joined nobody knows where; only where it settled may have been seen. */
function joinedWords(flown: Flown, pass: Pass, establishedS: number): string {
  const out = `${distanceNmAt(flown, establishedS).toFixed(1)} NM out`;
  const begins = recordBeginsWith(flown, pass);
  if (begins === null) return `it joined the final ${out}`;
  if (establishedS > flown.track.timeS[pass.first]!) return `it settled on the localizer ${out}`;
  return begins === 'log-begins'
    ? `the log begins on final, ${out}`
    : `the log goes on after a gap on final, ${out}`;
}

/** Settled far enough out for the moment to count as established on an approach. */
export function settledInTime(flown: Flown, establishedS: number | null): boolean {
  return establishedS !== null && distanceNmAt(flown, establishedS) >= ESTABLISHED_BEYOND_NM;
}

function distanceNmAt(flown: Flown, momentS: number): number {
  return at(flown, flown.deviations.distanceToThresholdNm, momentS);
}

/** Within half scale at or inside 4 NM, after settling on the localizer. */
function heldCloseIn(flown: Flown, pass: Pass, establishedS: number): boolean {
  const within = withinLocalizer(flown, HELD_FULL_SCALE);
  return someFix(flown, pass, establishedS, (i) => {
    return flown.deviations.distanceToThresholdNm[i]! <= HELD_INSIDE_NM && within.holds(i);
  });
}

function leftLate(flown: Flown, pass: Pass, establishedS: number): boolean {
  const intercept = findGlidepathIntercept(flown, pass, establishedS);
  if (!intercept) return false;
  const belowFt = at(flown, flown.track.altitudeFt, intercept.timeS) - LOWER_BY_FT;
  const within = withinLocalizer(flown, LEFT_FULL_SCALE);
  return someFix(flown, pass, establishedS, (i) => {
    const inside = flown.deviations.distanceToThresholdNm[i]! <= LEFT_INSIDE_NM;
    return inside && within.holds(i) && flown.track.altitudeFt[i]! <= belowFt;
  });
}

function someFix(flown: Flown, pass: Pass, afterS: number, test: (i: number) => boolean): boolean {
  for (let i = pass.first; i <= pass.last; i++)
    if (flown.track.timeS[i]! >= afterS && test(i) && isInbound(flown, i)) return true;
  return false;
}

function onLocalizerAtFix(flown: Flown, fixS: number | null): boolean {
  return fixS !== null && Math.abs(at(flown, flown.deviations.localizerFullScale, fixS)) <= 1;
}

/**
 * Ours, to tell an approach from an overflight: it lost 300 ft on the localizer, and came within the glidepath's
 * scale or below 1,000 ft above the touchdown zone.
 */
function descended(flown: Flown, pass: Pass): boolean {
  const { altitudeFt } = flown.track;
  const lowFt = flown.facility.touchdownZoneElevationFt + 1000;
  let highestFt = -Infinity;
  let lost = false;
  let near = false;
  for (let i = pass.first; i <= pass.last; i++) {
    const heightFt = altitudeFt[i]!;
    if (!isInbound(flown, i) || Number.isNaN(heightFt)) continue;
    highestFt = Math.max(highestFt, heightFt);
    if (highestFt - heightFt >= LOWER_BY_FT) lost = true;
    if (Math.abs(flown.deviations.glidepathFullScale[i]!) <= 1 || heightFt < lowFt) near = true;
    if (lost && near) return true;
  }
  return false;
}
