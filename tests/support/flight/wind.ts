import type { Random } from './random.ts';
import { wander } from './random.ts';

/** Wind at two heights above the aerodrome, turning and growing in a straight line between, and its unrest. */
export interface WindPlan {
  readonly surface: { readonly fromTrueDeg: number; readonly speedKt: number };
  readonly at2000Ft: { readonly fromTrueDeg: number; readonly speedKt: number };
  /** Standard deviation of the gusts along each horizontal axis. */
  readonly gustKt: number;
  /** Standard deviation of rising and sinking air. */
  readonly verticalGustFpm: number;
}

export interface WindNow {
  readonly eastKt: number;
  readonly northKt: number;
  readonly upFpm: number;
}

export const CALM: WindPlan = {
  surface: { fromTrueDeg: 0, speedKt: 0 },
  at2000Ft: { fromTrueDeg: 0, speedKt: 0 },
  gustKt: 0,
  verticalGustFpm: 0,
};

/** The mean wind at a height above the aerodrome, as components toward east and north. */
export function meanWind(plan: WindPlan, heightAboveFt: number): { eastKt: number; northKt: number } {
  const share = Math.min(1, Math.max(0, heightAboveFt / 2000));
  const low = components(plan.surface);
  const high = components(plan.at2000Ft);
  return {
    eastKt: low.eastKt + share * (high.eastKt - low.eastKt),
    northKt: low.northKt + share * (high.northKt - low.northKt),
  };
}

/** Wind with gusts; the rising and sinking of the air dies out towards the ground, as it must. */
export function windyAir(plan: WindPlan, random: Random): (heightAboveFt: number, stepS: number) => WindNow {
  const east = wander(random.fork('gust-east'), plan.gustKt, 6);
  const north = wander(random.fork('gust-north'), plan.gustKt, 6);
  const up = wander(random.fork('gust-up'), plan.verticalGustFpm, 3);
  return (heightAboveFt, stepS) => {
    const mean = meanWind(plan, heightAboveFt);
    const nearGround = Math.min(1, Math.max(0, heightAboveFt / 150));
    return {
      eastKt: mean.eastKt + east.step(stepS),
      northKt: mean.northKt + north.step(stepS),
      upFpm: nearGround * up.step(stepS),
    };
  };
}

function components(wind: { fromTrueDeg: number; speedKt: number }): { eastKt: number; northKt: number } {
  const from = (wind.fromTrueDeg * Math.PI) / 180;
  return { eastKt: -wind.speedKt * Math.sin(from), northKt: -wind.speedKt * Math.cos(from) };
}
