/** What an altimeter adds to the pressure that it feels; temperature and setting belong to the atmosphere. */
export interface AltimeterClass {
  /** First-order lag. */
  readonly lagS: number;
  /** Smallest step of the recorded value; 0 records it as it is. */
  readonly stepFt: number;
}

export const NO_LAG: AltimeterClass = { lagS: 0, stepFt: 0 };
export const PANEL: AltimeterClass = { lagS: 0.4, stepFt: 1 };
export const TRANSPONDER: AltimeterClass = { lagS: 0.4, stepFt: 25 };

/** Follows an altitude with the class's lag and rounds it to its step. */
export function altimeter(kind: AltimeterClass): (altitudeFt: number, stepS: number) => number {
  let shownFt: number | null = null;
  return (altitudeFt, stepS) => {
    const share = kind.lagS > 0 ? 1 - Math.exp(-stepS / kind.lagS) : 1;
    shownFt = shownFt === null || share === 1 ? altitudeFt : shownFt + share * (altitudeFt - shownFt);
    return kind.stepFt > 0 ? Math.round(shownFt / kind.stepFt) * kind.stepFt : shownFt;
  };
}
