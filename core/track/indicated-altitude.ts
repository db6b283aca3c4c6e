import { pressureAltitudeFt } from '../earth/atmosphere.ts';
import { issue, type Issue } from '../issue/issue.ts';
import type { Log } from '../log/log.ts';

/** What the altimeter showed on each row of a log, as logged or worked out. */
export interface IndicatedAltitude {
  /** Null where it was neither logged nor can be worked out. */
  readonly altitudeFt: Float64Array | null;
  readonly issues: readonly Issue[];
}

/** The answer where there is no altimeter to be judged by. */
export const NOT_RECORDED: IndicatedAltitude = { altitudeFt: null, issues: [] };

const isVoid = (values: Float64Array | undefined): boolean =>
  values === undefined || values.every((value) => Number.isNaN(value));

/**
 * The indicated altitude: logged, else worked out from pressure altitude and an altimeter setting, `settingHpa` when
 * the user states one, else the log's own column row by row. Without a setting pressure altitude tells none.
 */
export function indicatedAltitude(
  { values }: Pick<Log, 'values'>,
  settingHpa: number | null,
): IndicatedAltitude {
  if (!isVoid(values.altitudeIndicatedFt)) return { altitudeFt: values.altitudeIndicatedFt!, issues: [] };
  const pressureFt = values.altitudePressureFt;
  if (pressureFt === undefined || isVoid(pressureFt)) return NOT_RECORDED;
  if (settingHpa !== null) {
    const shiftFt = pressureAltitudeFt(settingHpa);
    return derived(
      pressureFt.map((ft) => ft - shiftFt),
      `the altimeter setting of ${settingHpa.toFixed(0)} hPa that was stated`,
    );
  }
  const loggedHpa = values.altimeterSettingHpa;
  if (loggedHpa === undefined || isVoid(loggedHpa)) return { altitudeFt: null, issues: [NO_SETTING] };
  return derived(
    pressureFt.map((ft, i) => ft - pressureAltitudeFt(loggedHpa[i]!)),
    'the altimeter setting in the log',
  );
}

function derived(altitudeFt: Float64Array, setting: string): IndicatedAltitude {
  const message = `The indicated altitude is worked out from pressure altitude and ${setting}.`;
  return { altitudeFt, issues: [issue('caution', 'altitude-indicated-derived', message)] };
}

const NO_SETTING = issue(
  'caution',
  'altimeter-setting-unknown',
  'Pressure altitude was logged without an altimeter setting: it cannot tell decision altitude or gates.',
  { tip: 'State the altimeter setting of the flight.' },
);
