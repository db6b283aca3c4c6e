import { whole } from '../../core/units/whole.ts';
import type { Span } from '../../core/numeric/polyline.ts';
import { glidepathFeetAt, localizerFeetAt } from '../../core/sheet/beam-lines.ts';
import type { BandedStrip, Dots, ExtraStrip, Sheet } from '../../core/sheet/sheet.ts';
import { extentOf } from './domains.ts';
import { valueAtRow, type Row } from './rows.ts';

/** How a needle is told: in dots, of which so many make full scale, or in feet. */
export type ScaleWords = Dots | 'feet';

/** One strip of the sheet: a line over the miles, with what it is held to. */
export interface Strip {
  readonly id: BandedStrip | ExtraStrip;
  readonly title: string;
  readonly unit: string;
  readonly isExtra: boolean;
  /** Of the two that are told in dots or in feet. */
  readonly isNeedle: boolean;
  /** From the bottom to the top. */
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  readonly tickWords: (tick: number) => string;
  /** What the side at the top and the one at the bottom are called; null where the numbers say it. */
  readonly sides: readonly [string, string] | null;
  readonly valueOf: (row: Row) => number;
  /** 95 % half-width of the value. */
  readonly halfOf: (row: Row) => number;
  /** The same two in the unit that criteria are told in: there the line is straight between fixes. */
  readonly judged: { readonly valueOf: (row: Row) => number; readonly halfOf: (row: Row) => number };
  /** A limit of the standard, in the strip's unit, at a row. */
  readonly limitOf: (limit: number, row: Row) => number;
  /** What the line is to be compared with; null where there is nothing of the kind. */
  readonly reference: { readonly words: string; readonly valueOf: (row: Row) => number } | null;
}

interface Looked {
  readonly scale: ScaleWords;
  readonly extras: boolean;
  readonly recorded: boolean;
}

/** The strips that a sheet has something to show on. */
export function stripsOf(sheet: Sheet, looked: Looked, seen: Span): Strip[] {
  const strips = [
    needleStrip(sheet, looked, seen, 'localizer'),
    needleStrip(sheet, looked, seen, 'glidepath'),
    ...(sheet.columns.airspeedKt ? [airspeedStrip(sheet, sheet.columns.airspeedKt, seen)] : []),
    verticalSpeedStrip(sheet, seen),
  ];
  if (!looked.extras) return strips;
  const extras = Object.entries(sheet.columns.extras) as [ExtraStrip, Float64Array][];
  return [...strips, ...extras.map(([id, column]) => extraStrip(sheet, id, column, seen))];
}

const NEEDLES = {
  localizer: {
    title: 'Localizer',
    // As on the plan: who flies from left to right has the right below.
    up: -1,
    sides: ['left', 'right'],
    value: 'localizer',
    half: 'localizerHalf',
    along: 'localizerAlongFt',
    recorded: 'recordedLocalizer',
    feetAt: localizerFeetAt,
  },
  glidepath: {
    title: 'Glidepath',
    up: 1,
    sides: ['high', 'low'],
    value: 'glidepath',
    half: 'glidepathHalf',
    along: 'glidepathAlongFt',
    recorded: 'recordedGlidepath',
    feetAt: glidepathFeetAt,
  },
} as const;

/** A little more than full scale: what is beyond leaves the strip, and is never bent back into it. */
const NEEDLE_DOMAIN = 1.15;

function needleStrip(sheet: Sheet, looked: Looked, seen: Span, axis: 'localizer' | 'glidepath'): Strip {
  const { columns, beam } = sheet;
  const names = NEEDLES[axis];
  const along = columns[names.along];
  const { scale } = looked;
  const toUnit = (fullScale: number, row: Row) =>
    scale === 'feet' ? names.feetAt(beam, valueAtRow(along, row), fullScale) : fullScale * scale;
  const fullScaleOf = (row: Row) => valueAtRow(columns[names.value], row);
  const halfOf = (row: Row) => valueAtRow(columns[names.half], row);
  const valueOf = (row: Row) => toUnit(fullScaleOf(row), row);
  const most = scale === 'feet' ? mostFeet(sheet, seen, valueOf) : NEEDLE_DOMAIN * scale;
  const recorded = looked.recorded ? columns[names.recorded] : null;
  return {
    id: axis,
    title: names.title,
    unit: scale === 'feet' ? 'ft' : 'dots',
    isExtra: false,
    isNeedle: true,
    domain: [-most * names.up, most * names.up],
    ticks: scale === 'feet' ? evenTicks([-most, most]).ticks : [-scale, -scale / 2, 0, scale / 2, scale],
    tickWords: (tick) => (scale === 'feet' ? whole(Math.abs(tick)) : String(Math.abs(tick))),
    sides: names.sides,
    valueOf,
    halfOf: (row) => Math.abs(toUnit(halfOf(row), row)),
    judged: { valueOf: fullScaleOf, halfOf },
    limitOf: toUnit,
    reference: recorded && {
      words: 'as recorded',
      valueOf: (row) => toUnit(valueAtRow(recorded, row), row),
    },
  };
}

/** To both sides as far as was flown within full scale, so that small corrections are seen. */
function mostFeet(sheet: Sheet, seen: Span, valueOf: (row: Row) => number): number {
  const [low, high] = extentOf(sheet, seen, valueOf) ?? [0, 0];
  return Math.min(Math.max(-low, high, LEAST_FEET), MOST_FEET) * 1.1;
}
const LEAST_FEET = 100;
const MOST_FEET = 1500;

function airspeedStrip(sheet: Sheet, column: Float64Array, seen: Span): Strip {
  const { airspeedHalfKt } = sheet.columns;
  const valueOf = (row: Row) => valueAtRow(column, row);
  const domain = widened(sheet, seen, 'airspeed', valueOf, 5);
  const title = airspeedHalfKt > 0 ? 'Airspeed, estimated' : 'Airspeed';
  return plain({ id: 'airspeed', title, unit: 'kt' }, domain, valueOf, () => airspeedHalfKt);
}

function verticalSpeedStrip(sheet: Sheet, seen: Span): Strip {
  const { verticalSpeedFpm, verticalSpeedHalf, neededVerticalSpeedFpm } = sheet.columns;
  const valueOf = (row: Row) => valueAtRow(verticalSpeedFpm, row);
  const domain = widened(sheet, seen, 'verticalSpeed', valueOf, 100);
  const names = { id: 'verticalSpeed', title: 'Vertical speed', unit: 'ft/min' } as const;
  return {
    ...plain(names, domain, valueOf, (row) => valueAtRow(verticalSpeedHalf, row)),
    reference: {
      words: 'needed for the path',
      valueOf: (row) => valueAtRow(neededVerticalSpeedFpm, row),
    },
  };
}

const EXTRA_WORDS: Readonly<Record<ExtraStrip, readonly [title: string, unit: string]>> = {
  pitchDeg: ['Pitch', '°'],
  bankDeg: ['Bank', '°'],
  powerPercent: ['Power', '%'],
  engineRpm: ['Engine', 'rpm'],
  manifoldPressureInHg: ['Manifold pressure', 'inHg'],
  flapDeg: ['Flaps', '°'],
  gearDown: ['Gear', ''],
};

function extraStrip(sheet: Sheet, id: ExtraStrip, column: Float64Array, seen: Span): Strip {
  const valueOf = (row: Row) => valueAtRow(column, row);
  const [title, unit] = EXTRA_WORDS[id];
  const names = { id, title, unit };
  if (id === 'gearDown')
    return {
      ...plain(names, [-0.2, 1.2], valueOf),
      isExtra: true,
      ticks: [0, 1],
      tickWords: (tick) => (tick === 1 ? 'down' : 'up'),
    };
  return { ...plain(names, widened(sheet, seen, id, valueOf, 0.5), valueOf), isExtra: true };
}

function plain(
  names: Pick<Strip, 'id' | 'title' | 'unit'>,
  domain: [number, number],
  valueOf: Strip['valueOf'],
  halfOf: Strip['halfOf'] = () => 0,
): Strip {
  return {
    ...names,
    isExtra: false,
    isNeedle: false,
    domain,
    ...evenTicks(domain),
    sides: null,
    valueOf,
    halfOf,
    judged: { valueOf, halfOf },
    limitOf: (limit: number) => limit,
    reference: null,
  };
}

/** As far as the line goes, and as its limits where there are any. */
function widened(
  sheet: Sheet,
  seen: Span,
  strip: Strip['id'],
  valueOf: (row: Row) => number,
  space: number,
): [number, number] {
  const [low, high] = extentOf(sheet, seen, valueOf) ?? [0, 1];
  const limits = sheet.bands
    .filter((band) => band.strip === strip && band.startS < seen.endS && band.endS > seen.startS)
    .flatMap(({ lower, upper }) => [lower, upper])
    .filter((limit) => limit !== null);
  return [Math.min(low, ...limits) - space, Math.max(high, ...limits) + space];
}

/** A few round numbers within a domain, told as finely as they are apart. */
function evenTicks([low, high]: readonly [number, number]): Pick<Strip, 'ticks' | 'tickWords'> {
  const step = roundStep((high - low) / 3.2);
  const ticks = [];
  for (let k = Math.ceil(low / step); k * step <= high; k++) ticks.push(k * step);
  const tenths = (tick: number) => tick.toFixed(1).replace('-', '−');
  return { ticks, tickWords: step < 1 ? tenths : whole };
}

function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return power * ([1, 2, 5].find((times) => times * power >= least) ?? 10);
}
