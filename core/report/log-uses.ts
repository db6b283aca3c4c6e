import { median } from '../numeric/median.ts';
import type { Log, Quantity } from '../log/log.ts';
import {
  isBySatellite,
  positionErrorOf,
  sinkErrorFpm,
  type ErrorSource,
  type PositionError,
} from '../track/position-error.ts';
import type { ReceiverKind } from '../track/receiver.ts';
import type { Track } from '../track/track.ts';

/** What an analysis takes from a log: one quantity, where from, how far off, and what for. */
export interface LogUse {
  readonly quantity: string;
  /** A column by its header, or how it is worked out; null where the log allows neither. */
  readonly from: string | null;
  /** Usual 95 % half-width; null where there is none to tell, or the quantity is what the pilot flew by. */
  readonly halfWidth: number | null;
  readonly unit: 'ft' | 'ft/min' | 'kt' | 'deg' | 'full scale' | null;
  /** How that is known; null likewise. */
  readonly errorFrom: string | null;
  readonly usedFor: string;
}

export const RECEIVER_WORDS: Readonly<Record<ReceiverKind, string>> = {
  augmented: 'an augmented receiver',
  plain: 'a plain receiver',
  phone: 'a phone',
};
/** How a half-width is known, where not by the receiver's class. */
export const ERROR_SOURCE_WORDS: Readonly<Record<Exclude<ErrorSource, 'class'>, string>> = {
  protection: "the log's protection levels",
  accuracy: "the log's own accuracy",
  dilution: 'its dilution of precision',
  unnamed: 'an altitude of no named kind',
  altimeter: 'an altimeter and its air',
  roll: 'the roll after landing',
};

/** 0.2 m/s, 95 % (GPS SPS Performance Standard, 5th edition (2020), table 3.8-3, second-hand). */
const GROUNDSPEED_KT = 0.4;
/** Vertical speed is a line through the heights of this long (design, section 8). */
const SINK_FIT_S = 6;
const FLOWN_BY = 'what it showed is what the pilot flew by';
const SO_MANY = 1000;

/** What a log allows, in the order in which a debrief asks for it. The lowest height stands for the aerodrome's. */
export function logUses(log: Log, track: Track): LogUse[] {
  const lowestFt = track.altitudeFt.reduce((low, ft) => (ft < low ? ft : low), Infinity);
  const error = positionErrorOf(track, lowestFt);
  const usual = (half: (i: number) => number) => {
    const step = Math.max(1, Math.ceil(track.count / SO_MANY));
    return median(Array.from({ length: Math.ceil(track.count / step) }, (_, k) => half(k * step)));
  };
  const known = (source: ErrorSource) =>
    source === 'class' ? receiverWords(track) : ERROR_SOURCE_WORDS[source];
  const header = headersOf(log);
  const heightFrom = header[HEIGHTS[track.altitudeSource]] ?? 'altitude and setting';
  return [
    {
      quantity: 'position',
      from: [header.latDeg, header.lonDeg].join(' and '),
      halfWidth: usual(error.sideFt),
      unit: 'ft',
      errorFrom: known(error.sideFrom),
      usedFor: 'both needles, the centreline, the ground track',
    },
    {
      quantity: 'height for the beam',
      from: track.altitudeSource === 'ellipsoid-less-geoid' ? `${heightFrom} less the geoid` : heightFrom,
      halfWidth: usual(error.heightFt),
      unit: 'ft',
      errorFrom: known(error.heightFrom),
      usedFor: 'the glidepath needle, sink rates, the threshold and the touchdown',
    },
    deciding(track, usual(error.decidingFt), header),
    {
      quantity: 'groundspeed',
      from: header.groundspeedKt ?? 'positions over 5 s',
      halfWidth: track.derived.groundspeedKt ? null : GROUNDSPEED_KT,
      unit: track.derived.groundspeedKt ? null : 'kt',
      errorFrom: track.derived.groundspeedKt ? null : 'a satellite receiver',
      usedFor: 'the descent that the path needs, the roll, the wind',
    },
    sinkUse(
      track,
      usual((i) => sinkErrorFpm(error, i, SINK_FIT_S)),
      error,
      header,
    ),
    ...instruments(header),
    wind(log),
    ...needles(header),
  ];
}

const HEIGHTS: Readonly<Record<Track['altitudeSource'], Quantity>> = {
  geometric: 'altitudeGeometricFt',
  'ellipsoid-less-geoid': 'altitudeEllipsoidFt',
  unnamed: 'altitudeUnnamedFt',
  indicated: 'altitudeIndicatedFt',
  pressure: 'altitudePressureFt',
  transponder: 'altitudeTransponderFt',
};

type Headers = { readonly [Q in Quantity]?: string };

function headersOf({ columns, values }: Log): Headers {
  const named = columns.flatMap(({ role, header }) =>
    role !== null && role in values ? [[role, `"${header}"`] as const] : [],
  );
  return Object.fromEntries(named);
}

function receiverWords({ receiver }: Track): string {
  return `${RECEIVER_WORDS[receiver.kind]}${receiver.isStated ? '' : ', as it seems'}`;
}

function deciding(track: Track, halfWidth: number, header: Headers): LogUse {
  const own = {
    quantity: 'altitude to decide by',
    usedFor: 'gates, decision altitude, altitude before final',
  };
  if (header.altitudeIndicatedFt !== undefined && track.altitudeIndicatedFt)
    return halfWidth === 0
      ? { ...own, from: header.altitudeIndicatedFt, halfWidth: null, unit: null, errorFrom: FLOWN_BY }
      : {
          ...own,
          from: header.altitudeIndicatedFt,
          halfWidth,
          unit: 'ft',
          errorFrom: 'the steps it is written in',
        };
  const from = track.altitudeIndicatedFt
    ? `${header.altitudePressureFt ?? 'pressure altitude'} and an altimeter setting`
    : 'the height for the beam, for want of an altimeter';
  return {
    ...own,
    from,
    halfWidth,
    unit: 'ft',
    errorFrom: track.altitudeIndicatedFt ? 'the setting' : 'as above',
  };
}

function sinkUse(
  track: Track,
  fittedFpm: number,
  { recordedSinkFpm, roundingFt }: PositionError,
  header: Headers,
): LogUse {
  const own = {
    quantity: 'vertical speed',
    unit: 'ft/min',
    usedFor: 'stability after a gate, where a descent was stopped',
  } as const;
  if (!track.derived.verticalSpeedFpm)
    return {
      ...own,
      from: header.verticalSpeedFpm ?? null,
      halfWidth: recordedSinkFpm,
      errorFrom: 'as a satellite receiver has it; an instrument lags',
    };
  const isRounded = roundingFt > 0;
  const errorFrom = isBySatellite(track)
    ? `how the height wanders${isRounded ? ', and the steps it is written in' : ''}`
    : isRounded
      ? 'the steps that heights are written in'
      : 'an altimeter, off by much the same all along';
  return { ...own, from: `a line through the heights of ${SINK_FIT_S} s`, halfWidth: fittedFpm, errorFrom };
}

function instruments(header: Headers): LogUse[] {
  const shown = (quantity: string, from: string | undefined, usedFor: string): LogUse => ({
    quantity,
    from: from ?? null,
    halfWidth: null,
    unit: null,
    errorFrom: from === undefined ? null : FLOWN_BY,
    usedFor,
  });
  return [
    shown(
      'indicated airspeed',
      header.airspeedIndicatedKt,
      'airspeed on final and at the gates, against a stated target',
    ),
    shown('bank', header.bankDeg, 'stability at the gates'),
  ];
}

function wind({ values }: Log): LogUse {
  const speed = values.airspeedTrueKt
    ? 'true airspeed'
    : values.airspeedIndicatedKt
      ? 'indicated airspeed'
      : null;
  const heading = (values.headingTrueDeg ?? values.headingMagneticDeg) ? 'heading' : null;
  return {
    quantity: 'wind',
    from: speed && heading ? `${speed}, ${heading}, groundspeed and ground track` : null,
    halfWidth: null,
    unit: null,
    errorFrom: null,
    usedFor: 'headwind and crosswind, told and not judged',
  };
}

function needles(header: Headers): LogUse[] {
  const recorded = [
    ['recorded localizer', header.localizerRecordedFullScale],
    ['recorded glidepath', header.glidepathRecordedFullScale],
  ] as const;
  return recorded.map(([quantity, from]) => ({
    quantity,
    from: from ?? null,
    halfWidth: null,
    unit: null,
    errorFrom: null,
    usedFor: 'a comparison with the computed needle, which grades',
  }));
}
