import { readingFeet, roundTo } from '../report/reading-feet.ts';
import { whole } from '../units/whole.ts';
import type { Briefing } from './briefing.ts';
import { temperatureWords } from './words.ts';

/** A table of the sheet, for text and page alike. */
export interface BriefingTable {
  readonly title: string;
  /** Over the labels of the rows. */
  readonly corner: string;
  readonly columns: readonly string[];
  /** The column that was asked for; null where none was. */
  readonly asked: number | null;
  readonly rows: readonly { readonly label: string; readonly cells: readonly string[] }[];
}

export function pathTable({ path, temperatureC }: Briefing): BriefingTable {
  const altimeter = path.map(({ altimeterFt }) => (altimeterFt === null ? '' : readingFeet(altimeterFt)));
  return {
    title: 'The path, in feet above sea level, with the curve of the earth',
    corner: 'NM to the threshold',
    columns: path.map(({ distanceNm }) => String(distanceNm)),
    asked: null,
    rows: [
      { label: 'The path is at', cells: path.map(({ altitudeFt }) => readingFeet(altitudeFt)) },
      ...(temperatureC === null
        ? []
        : [{ label: `Altimeter at ${temperatureWords(temperatureC)}`, cells: altimeter }]),
    ],
  };
}

export function descentTable({ descents, decision }: Briefing): BriefingTable {
  const asked = descents.findIndex(({ isAsked }) => isAsked);
  return {
    title: 'Sink rate that holds the path, and time from the fix to decision altitude',
    corner: 'Groundspeed, kt',
    columns: descents.map(({ groundspeedKt }) => String(groundspeedKt)),
    asked: asked < 0 ? null : asked,
    rows: [
      { label: 'Sink rate, ft/min', cells: descents.map(({ rateFpm }) => whole(roundTo(5, rateFpm))) },
      {
        label: 'Fix to decision, min:s',
        // Without a decision altitude there is room for a pencil.
        cells: descents.map(({ timeS }) => (timeS === null || decision === null ? '__:__' : clock(timeS))),
      },
    ],
  };
}

export function needleTable({ needles: { dots, places, rows } }: Briefing): BriefingTable {
  const needle = (name: string, key: 'localizerFt' | 'glidepathFt') =>
    rows.map((row) => ({
      label: `${name} ${FRACTIONS.get(row.fraction)!}${row.fraction === 1 / dots ? ', one dot' : ''}`,
      cells: row[key].map(readingFeet),
    }));
  return {
    title: `What the needles mean, in feet: parts of full scale, which is ${dots} dots`,
    corner: 'To the threshold',
    columns: places.map(({ distanceNm, isDecision }) => (isDecision ? 'at decision' : `${distanceNm} NM`)),
    asked: null,
    rows: [...needle('Localizer', 'localizerFt'), ...needle('Glidepath', 'glidepathFt')],
  };
}

const FRACTIONS: ReadonlyMap<number, string> = new Map([
  [0.2, '⅕'],
  [0.25, '¼'],
  [0.5, '½'],
  [0.75, '¾'],
]);

/** 181 s as "3:01". */
function clock(seconds: number): string {
  const s = Math.round(seconds);
  return `${Math.floor(s / 60)}:${String(s % 60).padStart(2, '0')}`;
}
