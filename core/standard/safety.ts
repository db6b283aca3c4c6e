import { excursionsOff, type Excursion } from '../approach/excursions.ts';
import { at } from '../approach/flown.ts';
import { NEAR_FULL_SCALE } from '../approach/needle-measures.ts';
import type { Polyline } from '../numeric/polyline.ts';
import { whole } from '../units/whole.ts';
import { endedBy, finalOf, halfWidthsIn, moment, recordedIn, withoutInstructor, type Case } from './case.ts';
import { glidepathOnFinal, localizerOnFinal } from './counting.ts';
import { fallsToS } from './falling.ts';
import { gateDatumFt } from './gate-datum.ts';
import type { CriterionJudgement, GateJudgement } from './judgement.ts';
import { BLIND_DESCENT_S, descentBelowS } from './minimums.ts';
import { seconds } from './words.ts';

const FULL_SCALE = { lower: -1, upper: 1 };
const ON_THE_STOP_S = 3;
/** A go-around begun this soon after an item went outside answers it (design, section 11). */
const ANSWERED_S = 10;
const LOW_FT = 300;
/** Less than a sink that anybody would call a descent on a glidepath (ours). */
const LEVEL_FPM = 200;

/** The safety limits that were crossed, each as a clause; only what is proven. */
export function safetyLimits(sitting: Case, gates: readonly GateJudgement[]): string[] {
  return [...onTheStop(sitting), ...unstableAndContinued(sitting, gates), ...blindDescent(sitting)];
}

/** Full scale for 3 s on final with no missed approach begun within 10 s. */
function onTheStop(sitting: Case): string[] {
  const { standard } = sitting;
  const { deviations, needleError } = sitting.flown;
  // What is safe does not wait for the gate of a standard.
  const onFinal: Case = {
    ...sitting,
    standard: { ...standard, final: { ...standard.final, countsFrom: 'fix' } },
  };
  const needles = [
    {
      name: 'localizer',
      sides: ['right of', 'left of'],
      column: deviations.localizerFullScale,
      counting: localizerOnFinal(onFinal),
      halfWidth: needleError.localizer,
    },
    {
      name: 'glidepath',
      sides: ['high on', 'low on'],
      column: deviations.glidepathFullScale,
      counting: glidepathOnFinal(onFinal),
      halfWidth: needleError.glidepath,
    },
  ] as const;
  const wentAround = moment(sitting, 'missed-approach-start') !== null;
  const unanswered = `without going around${wentAround ? ` within ${seconds(ANSWERED_S)}` : ''}`;
  return needles.flatMap(({ name, sides, column, counting, halfWidth }) => {
    if ('why' in counting) return [];
    const spans = withoutInstructor(sitting, counting.span);
    const parts = recordedIn(sitting, column, spans);
    const halfWidths = halfWidthsIn(sitting, column, halfWidth, spans);
    // Only what holds with the position off inward is proven.
    const long = excursionsOff(parts, halfWidths, FULL_SCALE, NEAR_FULL_SCALE, -1).find(
      (excursion) =>
        excursion.outsideS >= ON_THE_STOP_S &&
        !isAnswered(sitting, excursion.startS) &&
        !(name === 'glidepath' && isHeldHigh(sitting, excursion, counting.span.endS)),
    );
    return long
      ? [
          `full scale ${sides[long.side === 'above' ? 0 : 1]} the ${name} for ${sure(halfWidths)}${seconds(long.outsideS)} on final, ${unanswered}`,
        ]
      : [];
  });
}

/** Who leaves it to circle is above the path from where circling altitude is held; who still sinks there is not. */
function isHeldHigh(sitting: Case, { startS, endS, side }: Excursion, untilS: number): boolean {
  if (endedBy(sitting) !== 'leaving' || side !== 'above' || endS < untilS) return false;
  const { flown } = sitting;
  const sunkFt = at(flown, flown.decidingAltitudeFt, startS) - at(flown, flown.decidingAltitudeFt, endS);
  return (60 * sunkFt) / (endS - startS) < LEVEL_FPM;
}

/** Of a value that may be off, what is told is the least that it was. */
function sure(halfWidths: readonly Polyline[]): string {
  return halfWidths.some(({ value }) => value.some((half) => half > 0)) ? 'at least ' : '';
}

function unstableAndContinued(sitting: Case, gates: readonly GateJudgement[]): string[] {
  const gate = gates.find((found) => found.gate === 'gate-500')!;
  const failed = gate.items.filter(({ item, verdict, measured, limit }) => {
    if (verdict !== 'not-met' || item === 'bank') return false;
    if (item !== 'airspeed') return true;
    return sitting.standard.gates.speedBasis === 'vref' && measured! < limit!.lower!;
  });
  if (failed.length === 0 || !surelyContinued(sitting, gate)) return [];
  return [`${failed.map(({ item }) => item).join(' and ')} outside at 500 ft, and continued through 300 ft`];
}

/** Whether the approach was continued through 300 ft after a gate: only what holds with all of the error is proven. */
export function surelyContinued(sitting: Case, { timeS }: GateJudgement): boolean {
  return timeS !== null && continuedThrough(sitting, timeS, LOW_FT, 'high');
}

/** Whether the aircraft came down through a height above the datum before any missed approach was begun. */
function continuedThrough(
  sitting: Case,
  fromS: number,
  heightFt: number,
  off: 'high' | null = null,
): boolean {
  const { flown, standard, approach } = sitting;
  const lowFt = gateDatumFt(standard, flown.facility) + heightFt;
  const untilS = Math.min(moment(sitting, 'missed-approach-start') ?? Infinity, approach.endS);
  const span = { startS: fromS, endS: untilS };
  const altitudeFt = off ? flown.decidingOffFt[off] : flown.decidingAltitudeFt;
  return fallsToS(flown, span, altitudeFt, lowFt) !== null;
}

function blindDescent(sitting: Case): string[] {
  if (sitting.stated.visualReferenceAtMinimums !== 'not-seen') return [];
  const decisionS = moment(sitting, 'decision-altitude');
  if (decisionS === null || sitting.flown.facility.decisionAltitudeFt === null) return [];
  const { surelyS } = descentBelowS(sitting, decisionS);
  if (surelyS <= BLIND_DESCENT_S) return [];
  return [`descended for ${seconds(surelyS)} below decision altitude with the runway not in sight`];
}

function isAnswered(sitting: Case, outsideS: number): boolean {
  const startS = moment(sitting, 'missed-approach-start');
  return startS !== null && startS >= outsideS && startS <= outsideS + ANSWERED_S;
}

/**
 * Why a go-around was a sound decision: begun within 10 s of an item going outside, or, after the 500 ft gate was
 * failed, before 300 ft (the second is ours; it is the other side of what makes level 1).
 */
export function soundGoAround(
  sitting: Case,
  criteria: readonly CriterionJudgement[],
  gates: readonly GateJudgement[],
): string | null {
  const startS = moment(sitting, 'missed-approach-start');
  const final = finalOf(sitting);
  if (startS === null || !final) return null;
  const outside = criteria
    .filter(({ id }) => !id.endsWith('before-final'))
    .flatMap(({ title, excursions }) => excursions.map((excursion) => ({ title, startS: excursion.startS })))
    .find((excursion) => isAnswered(sitting, excursion.startS));
  if (outside)
    return `went around ${seconds(startS - outside.startS)} after the ${outside.title.split(' ')[0]!.toLowerCase()} went outside`;
  const lost = gates.flatMap(({ lostAfter }) => lostAfter).find((spell) => isAnswered(sitting, spell.startS));
  if (lost) return `went around ${seconds(startS - lost.startS)} after ${lost.item} was lost`;
  const failed = gates.find(({ gate, verdict, timeS }) => {
    if (verdict !== 'not-met') return false;
    return isAnswered(sitting, timeS!) || (gate === 'gate-500' && !continuedThrough(sitting, timeS!, LOW_FT));
  });
  if (!failed) return null;
  const { flown, standard } = sitting;
  const heightFt = at(flown, flown.decidingAltitudeFt, startS) - gateDatumFt(standard, flown.facility);
  return `went around at ${whole(heightFt)} ft, not stable at ${whole(failed.heightFt)}`;
}
