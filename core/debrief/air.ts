import type { WholeMeasures } from '../approach/whole-measures.ts';
import { windNeeds, type Wind } from '../approach/wind.ts';
import { airspeedOf } from '../standard/airspeed.ts';
import type { Case } from '../standard/case.ts';

/** What is known of the air that an approach was flown through. */
export interface Air {
  /** Indicated airspeed at every fix; absent without a column of it and without a stated wind. */
  readonly airspeedKt: Float64Array | undefined;
  /** From groundspeed and the stated wind. */
  readonly estimated: boolean;
  /** The wind of final, which is measured with the whole approach; null where it is not known. */
  readonly windOnFinal: Wind | null;
  /** What turns a magnetic heading to true; null where not known. */
  readonly variationDeg: number | null;
  /** Why a wind is not known where there is none. */
  readonly noWind: string;
}

const NO_WIND = {
  airspeed: 'Wind needs an airspeed, which the log lacks.',
  heading: 'Wind needs a heading, which the log lacks.',
  variation: 'Wind needs a true heading: the log has a magnetic one, and the variation is not known.',
  recorded: 'Airspeed, heading, track and groundspeed were not recorded together there.',
};

export function airOf(
  { flown, stated }: Case,
  { wind }: Pick<WholeMeasures, 'wind'>,
  variationDeg: number | null,
): Air {
  const airspeed = airspeedOf({ flown, stated });
  return {
    airspeedKt: 'why' in airspeed ? undefined : airspeed.column,
    estimated: !('why' in airspeed) && airspeed.halfWidthKt > 0,
    windOnFinal: wind,
    variationDeg,
    noWind: NO_WIND[windNeeds(flown, variationDeg)],
  };
}
