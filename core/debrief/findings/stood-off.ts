import type { Span } from '../../numeric/polyline.ts';
import { needleColumn, needleHalfWidth, over, type Asked, type Needle, type Reading } from './asked.ts';
import { changeHalfWidthFt, halfScaleFt } from './path-change.ts';

/** A fault of where a needle stood is none within this, whatever else was measured (design, section 11: well inside). */
const STOOD_OFF_FULL_SCALE = 0.5;

/**
 * Whether a needle surely stood beyond half scale at some moment of a span: with all of its error inward, or, on the
 * glidepath, because it moved by more than both halves, so that it was beyond one of them wherever the middle is.
 */
export function surelyStoodOff(asked: Asked, needle: Needle, span: Span): boolean {
  const isBeyond = over(asked, needleColumn(asked, needle), span).some(({ timeS, value }) =>
    value.some((v, i) => Math.abs(v) - needleHalfWidth(asked, needle, timeS[i]!) > STOOD_OFF_FULL_SCALE),
  );
  return isBeyond || (needle === 'glidepath' && surelyMovedThrough(asked, span));
}

/** From above half scale to below it or back, by the change of height alone. */
function surelyMovedThrough(asked: Asked, span: Span): boolean {
  const { flown } = asked.sitting;
  let above: Reading = { s: span.startS, value: -Infinity };
  let below: Reading = { s: span.startS, value: Infinity };
  for (const { timeS, value } of over(asked, flown.deviations.heightAboveGlidepathFt, span))
    for (let i = 0; i < timeS.length; i++) {
      const s = timeS[i]!;
      const halfFt = halfScaleFt(asked, s);
      if (value[i]! - halfFt > above.value) above = { s, value: value[i]! - halfFt };
      if (value[i]! + halfFt < below.value) below = { s, value: value[i]! + halfFt };
    }
  return above.value - below.value > changeHalfWidthFt(flown, above.s, Math.abs(above.s - below.s));
}
