import { issue, type Issue } from '../issue/issue.ts';
import { wrap360 } from '../units/units.ts';
import { momentOf, type FlownApproach } from './flown-approach.ts';
import type { Flown } from './flown.ts';
import { heightAboveThresholdAt } from './on-ground.ts';
import { OFF_HEIGHT_FT, type Rollout } from './rollout.ts';

/** Farther from the centreline nobody rolls on purpose, nor does a receiver put him there (ours). */
const BESIDE_FT = 60;
/** A roll is askew to the runway when it points more than this aside, and leads farther aside than one strays (ours). */
const ASKEW_DEG = 1;
const ASTRAY_FT = 40;

/**
 * What a landing says against the facility as it was entered: each a question with the field that is likely wrong,
 * to be settled before any grade is believed.
 */
export function facilityDoubts(flown: Flown, approach: FlownApproach, roll: Rollout | null): Issue[] {
  if (roll === null) return [];
  const { trueBearingDeg } = flown.facility;
  const doubts: Issue[] = [];
  if (roll.offsetFt !== null && Math.abs(roll.offsetFt) > BESIDE_FT)
    doubts.push(
      doubt(
        'facility-centreline',
        `The roll ran ${feet(roll.offsetFt)} ${roll.offsetFt > 0 ? 'right' : 'left'} of the entered centreline.`,
        'Check the positions of runway.threshold and runway.farEnd.',
      ),
    );
  if (isAskew(roll))
    doubts.push(
      doubt(
        'facility-bearing',
        `The roll ran along ${degrees(wrap360(trueBearingDeg + roll.askewDeg!))} true, and the runway is entered at ${degrees(trueBearingDeg)}.`,
        'Check the positions of both ends of the runway, or runway.trueBearingDeg.',
      ),
    );
  const abeamS = momentOf(approach, 'abeam-threshold');
  if (abeamS !== null)
    doubts.push(
      doubt(
        'facility-threshold',
        `It landed, and yet crossed the entered threshold ${feet(heightAboveThresholdAt(flown, abeamS))} up.`,
        'Is runway.threshold the landing threshold of this runway, and is its elevation right?',
      ),
    );
  if (roll.heightBiasFt !== null && Math.abs(roll.heightBiasFt) > OFF_HEIGHT_FT)
    doubts.push(
      doubt(
        'facility-elevation',
        `On the roll the log stood ${feet(roll.heightBiasFt)} ${roll.heightBiasFt > 0 ? 'above' : 'below'} the entered runway.`,
        "Check runway.threshold.elevationFt and runway.farEnd.elevationFt, or which height the log's column holds.",
      ),
    );
  return doubts;
}

function isAskew({ askewDeg, asideFt }: Rollout): boolean {
  return Math.abs(askewDeg ?? 0) > ASKEW_DEG && Math.abs(asideFt ?? 0) > ASTRAY_FT;
}

function doubt(code: string, message: string, tip: string): Issue {
  return issue('warning', code, message, { tip });
}

function feet(ft: number): string {
  return `${Math.abs(Math.round(ft))} ft`;
}

function degrees(deg: number): string {
  return `${deg.toFixed(1).padStart(5, '0')}°`;
}
