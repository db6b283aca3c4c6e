import { parseAngle } from '../../core/log/angle-text.ts';
import { parseNumber } from '../../core/log/parse-number.ts';
import { bearingWords, variationWords } from '../../core/facility/wording.ts';
import { FEET_PER_METRE } from '../../core/units/units.ts';
import { whole } from '../../core/units/whole.ts';
import type { FacilityField } from './facility-fields.ts';

/** A hundred-millionth of a degree is a millimetre: no chart prints as much. */
const DECIMALS_OF_DEGREES = 8;

/**
 * What a field's text stands for in the file: undefined where it is empty, a number where it can be read as one, and
 * else the text itself, so that nothing of what was typed is lost; the file's reader then says that it is no number.
 */
export function valueTyped(field: FacilityField, typed: string): string | number | undefined {
  const text = typed.trim();
  if (text === '') return undefined;
  if (field.kind === 'words' || field.kind === 'lines') return text;
  if (field.kind === 'capitals') return text.toUpperCase();
  const number = numberTyped(field, text.replace(/^[−–]/, '-'));
  return Number.isNaN(number) ? text : number;
}

/** What a field shows of a value of the file. */
export function textOf({ kind }: FacilityField, value: unknown): string {
  if (value === undefined) return '';
  if (typeof value === 'string') return value;
  if (typeof value !== 'number') return JSON.stringify(value);
  if (kind === 'bearing' && value >= 0 && value < 360) return threeFigures(value);
  return kind === 'latitude' || kind === 'longitude' ? plainDegrees(value) : String(value);
}

/** What a typed value was taken for, said in another way than it was typed; null where there is no doubt. */
export function readBack(field: FacilityField, value: unknown, shown: string): string | null {
  if (typeof value !== 'number') return null;
  const { kind } = field;
  if (kind === 'latitude') return Math.abs(value) > 90 ? null : degreesBothWays(value, 'NS', 2);
  if (kind === 'longitude') return Math.abs(value) > 180 ? null : degreesBothWays(value, 'EW', 3);
  if (kind === 'variation') return variationWords(value);
  return inMetres(field, shown) === null ? null : `${whole(value)} ft`;
}

function numberTyped(field: FacilityField, text: string): number {
  switch (field.kind) {
    case 'latitude':
      return angleTyped(text, 'lat');
    case 'longitude': {
      const degrees = angleTyped(text, 'lon');
      // The one meridian has two names, and the file knows it by the western one.
      return degrees === 180 ? -180 : degrees;
    }
    case 'variation':
      return angleTyped(
        text.replace(/\s*(east|west)$/i, (side) => side.trim()[0]!),
        'lon',
      );
    default: {
      const metres = inMetres(field, text);
      return metres === null ? parseNumber(withoutUnit(field, text), '.') : metres;
    }
  }
}

/** Runway lengths and visual ranges are printed in metres on many charts: feet to a tenth, or null. */
function inMetres({ unit }: FacilityField, text: string): number | null {
  if (unit !== 'ft' || !/\d\s*m$/i.test(text.trim())) return null;
  const metres = parseNumber(text.trim().slice(0, -1), '.');
  return Math.round(metres * FEET_PER_METRE * 10) / 10;
}

function withoutUnit({ unit }: FacilityField, text: string): string {
  if (unit === 'degrees') return text.replace(/\s*°$/, '');
  const isOwn = unit !== null && text.toLowerCase().endsWith(unit.toLowerCase());
  return isOwn ? text.slice(0, -unit.length) : text;
}

/** Degrees, minutes and seconds without anything between them, as publications of positions have them: 311230.4S. */
const RUN_TOGETHER = {
  lat: /^([NS])?\s*(\d{2})(\d{2})(\d{2})?([.,]\d+)?\s*([NS])?$/i,
  lon: /^([EW])?\s*(\d{3})(\d{2})(\d{2})?([.,]\d+)?\s*([EW])?$/i,
};
/** Only the last of several parts can have decimals, and a letter leaves nothing for a sign to say. */
const CONTRADICTORY = /\d[.,]\d+[\s°º:'′’]+\d|^[NSEW]\s*[+-]|^[+-].*[NSEW]$/i;

function angleTyped(text: string, axis: 'lat' | 'lon'): number {
  const parted = parts(text, axis)
    .replace(/(\d)\s*[-–]\s*(?=\d)/g, '$1 ')
    .replace(/″|”|''/g, '"');
  if (CONTRADICTORY.test(parted)) return NaN;
  const degrees = parseAngle(parted, axis);
  return Number.isNaN(degrees) ? NaN : Number(degrees.toFixed(DECIMALS_OF_DEGREES));
}

/** Without a letter a run of figures is no position: it may be anything. */
function parts(text: string, axis: 'lat' | 'lon'): string {
  const [, before = '', degrees, minutes, seconds = '', decimals = '', behind = ''] =
    RUN_TOGETHER[axis].exec(text) ?? [];
  if (degrees === undefined || before + behind === '') return text;
  return `${before}${degrees} ${minutes}${seconds && ` ${seconds}`}${decimals}${behind}`;
}

/** "S31° 12′ 30.40″" and, on a line of its own, "or S31° 12.507′": whichever the chart prints can be compared at a glance. */
function degreesBothWays(value: number, letters: string, figures: number): string {
  const letter = value < 0 ? letters[1]! : letters[0]!;
  const size = Math.abs(value);
  const inHundredths = Math.round(size * 360_000);
  const inThousandths = Math.round(size * 60_000);
  const degrees = (of: number) => String(Math.floor(of)).padStart(figures, '0');
  const seconds = ((inHundredths % 6000) / 100).toFixed(2).padStart(5, '0');
  const wholeMinutes = String(Math.floor((inHundredths % 360_000) / 6000)).padStart(2, '0');
  const minutes = ((inThousandths % 60_000) / 1000).toFixed(3).padStart(6, '0');
  const first = `${letter}${degrees(inHundredths / 360_000)}° ${wholeMinutes}′ ${seconds}″`;
  return `${first}\nor ${letter}${degrees(inThousandths / 60_000)}° ${minutes}′`;
}

function plainDegrees(value: number): string {
  return Math.abs(value) < 1e-5 ? value.toFixed(DECIMALS_OF_DEGREES) : String(value);
}

/** 7 as "007", and north as the file has it. */
function threeFigures(bearingDeg: number): string {
  const [, decimals = ''] = String(bearingDeg).split('.');
  return bearingDeg === 0 ? '0' : bearingWords(bearingDeg, Math.min(decimals.length, 8));
}
