import { medianAround } from '../approach/around.ts';
import type { Flown } from '../approach/flown.ts';
import { neededSinkFpm } from '../approach/glidepath-intercept.ts';
import { firstAfter, firstAtOrAfter } from '../numeric/polyline.ts';
import { sinkErrorFpm } from '../track/position-error.ts';
import { verticalSpeedFromHeights } from '../track/vertical-speed.ts';
import { whole } from '../units/whole.ts';
import { airspeedOf } from './airspeed.ts';
import type { Case } from './case.ts';
import { airspeedLimit, speedTarget } from './speed-target.ts';
import type { GateItem, ItemFinding } from './judgement.ts';
import type { Limit } from './standard.ts';
import { verdictWithin } from './within.ts';
import { bandWords, scaleWords } from './words.ts';

/** Sink at a gate is a straight line through the heights of this long, centred (design, section 9). */
const SINK_FIT_S = 5;
/** Above what the groundspeed needs, where that is more than the standard's limit. Ours. */
export const SINK_MARGIN_FPM = 300;

/** How each item stood at a gate. */
export function itemsAtGate(sitting: Case, momentS: number): ItemFinding[] {
  const { flown, standard } = sitting;
  const { deviations, track, needleError, error } = flown;
  const { localizer, glidepath, bankDeg } = standard.gates;
  const i = Math.min(firstAtOrAfter(track.timeS, momentS), track.count - 1);
  return [
    ...finding(
      'localizer',
      localizer,
      medianAround(flown, deviations.localizerFullScale, momentS),
      needleWords,
      needleError.localizer.at(i),
    ),
    ...finding(
      'glidepath',
      glidepath,
      medianAround(flown, deviations.glidepathFullScale, momentS),
      needleWords,
      needleError.glidepath.at(i),
    ),
    ...airspeedItem(sitting, momentS),
    ...finding(
      'sink',
      sinkLimit(sitting, momentS),
      sinkAt(flown, momentS),
      (limit, measured) => `${whole(measured)} ft/min, at most ${whole(limit.upper!)}`,
      sinkErrorFpm(error, i, SINK_FIT_S),
    ),
    ...(track.recorded.bankDeg
      ? finding(
          'bank',
          bankDeg,
          medianAround(flown, track.recorded.bankDeg, momentS),
          (limit, measured) => `${whole(Math.abs(measured))}°, at most ${limit.upper!}°`,
        )
      : unknown('bank', bankDeg, 'the log holds no bank')),
  ];
}

/** The sink limit of the standard, or what the groundspeed needs and 300 ft/min where that is more. */
export function sinkLimit({ flown, standard }: Case, momentS: number): Limit | null {
  const limit = standard.gates.sinkFpm;
  if (!limit) return null;
  const neededFpm = neededSinkFpm(flown, medianAround(flown, flown.track.groundspeedKt, momentS));
  const raised = Number.isNaN(neededFpm) ? -Infinity : neededFpm + SINK_MARGIN_FPM;
  return { ...limit, upper: Math.max(limit.upper!, raised) };
}

function airspeedItem(sitting: Case, momentS: number): ItemFinding[] {
  const limit = airspeedLimit(sitting, sitting.standard.gates.airspeed);
  const target = speedTarget(sitting.standard.gates.speedBasis, sitting.stated);
  if ('why' in target) return unknown('airspeed', limit, target.why);
  const airspeed = airspeedOf(sitting);
  if ('why' in airspeed) return unknown('airspeed', limit, airspeed.why);
  const kt = medianAround(sitting.flown, airspeed.column, momentS);
  return finding(
    'airspeed',
    limit,
    kt - target.kt,
    ({ lower, upper }) =>
      `${whole(kt)} kt, the limit is ${bandWords(lower, upper, 'kt')} of ${target.words}${airspeed.words}`,
    airspeed.halfWidthKt,
  );
}

function needleWords(limit: Limit, measured: number): string {
  return `${Math.abs(measured).toFixed(2)} of full scale, at most ${scaleWords(limit.upper!)}`;
}

/** One finding; none where the standard asks nothing of the item. */
function finding(
  item: GateItem,
  limit: Limit | null,
  measured: number,
  words: (limit: Limit, measured: number) => string,
  halfWidth = 0,
): ItemFinding[] {
  if (limit === null) return [];
  if (Number.isNaN(measured)) return unknown(item, limit, 'not recorded at the gate');
  const verdict = verdictWithin(limit, measured, halfWidth);
  const error = item === 'localizer' || item === 'glidepath' ? halfWidth.toFixed(2) : whole(halfWidth);
  const give = verdict === 'unclear' ? `, give or take ${error}` : '';
  return [{ item, measured, limit, verdict, why: `${words(limit, measured)}${give}` }];
}

function unknown(item: GateItem, limit: Limit | null, why: string): ItemFinding[] {
  return limit === null ? [] : [{ item, measured: null, limit, verdict: 'not-assessed', why }];
}

/** Sink rate, positive down, ft/min; NaN where too little was recorded. */
function sinkAt({ track }: Flown, momentS: number): number {
  const first = firstAtOrAfter(track.timeS, momentS - SINK_FIT_S / 2);
  const end = firstAfter(track.timeS, momentS + SINK_FIT_S / 2);
  const timeS = track.timeS.subarray(first, end);
  // No gap is shorter than the window, so none stands within it.
  const fitted = verticalSpeedFromHeights(timeS, track.altitudeFt.subarray(first, end), [], SINK_FIT_S);
  return fitted.length === 0 ? NaN : -fitted[fitted.length >> 1]!;
}
