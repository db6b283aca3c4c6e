import { z } from 'zod';
import { ALTITUDE_KINDS, QUANTITIES, TIME_ROLES, type LogSettings } from '../../core/log/log.ts';
import { RECEIVER_KINDS } from '../../core/track/receiver.ts';
import type { Stated } from '../../core/standard/stated.ts';

/** Names content, and never a place: of hex digits no path can be made. */
export const SHA256 = z.string().regex(/^[0-9a-f]{64}$/, 'A SHA-256 is 64 hex digits.');

/** One check for each key: the compiler asks for one where core gets another key, so that none is lost on the way. */
type ShapeOf<T> = { readonly [K in keyof T]-?: z.ZodType };

export const LOG_SETTINGS = z.strictObject({
  columns: z.record(z.string(), z.enum([...QUANTITIES, ...TIME_ROLES]).nullable()).exactOptional(),
  units: z.record(z.string(), z.string()).exactOptional(),
  altitudeKind: z.enum(ALTITUDE_KINDS).exactOptional(),
  dateOrder: z.enum(['ymd', 'dmy', 'mdy']).exactOptional(),
  timeZone: z.string().exactOptional(),
  startS: z.number().exactOptional(),
  altimeterSettingHpa: z.number().exactOptional(),
  receiver: z.enum(RECEIVER_KINDS).exactOptional(),
  temperatureC: z.number().exactOptional(),
} satisfies ShapeOf<LogSettings>);

const SPAN = z.strictObject({ startS: z.number(), endS: z.number() });
const ALLOWANCE = z.strictObject({ criterion: z.string(), by: z.number(), reason: z.string() });

const SAID = z.string().max(2000).nullable();
const REMARK = z.strictObject({
  approachUtc: z.string().max(64),
  finding: z.string().max(100),
  verdict: z.enum(['accepted', 'dismissed']).nullable(),
  words: SAID,
  answer: SAID,
});

/** Every key may be missing: what could not be stated yet when the notes were written was not stated. */
export const STATED = z.strictObject({
  conditions: z.enum(['imc', 'simulated', 'vmc', 'not-stated']).exactOptional(),
  visualReferenceAtMinimums: z.enum(['seen', 'not-seen', 'not-stated']).exactOptional(),
  targetAirspeedKt: z.number().nullable().exactOptional(),
  interceptAirspeedKt: z.number().nullable().exactOptional(),
  vrefKt: z.number().nullable().exactOptional(),
  assignedAltitudeFt: z.number().nullable().exactOptional(),
  wind: z.strictObject({ fromTrueDeg: z.number(), speedKt: z.number() }).nullable().exactOptional(),
  hood: z.boolean().nullable().exactOptional(),
  flown: z.enum(['hand-flown', 'coupled']).nullable().exactOptional(),
  vectoredInsideFix: z.boolean().exactOptional(),
  engineOut: z.boolean().exactOptional(),
  turbulence: z.string().nullable().exactOptional(),
  instructorFlew: z.array(SPAN).readonly().exactOptional(),
  allowances: z.array(ALLOWANCE).readonly().exactOptional(),
  remarks: z.array(REMARK).max(1000).readonly().exactOptional(),
} satisfies ShapeOf<Stated>);

/**
 * A log that was opened lately, with everything that was stated about it. Notes of older versions hold only `name` and
 * `sha256`: whatever else is missing was not known, or not stated. Keys that are added here are to be optional too, and
 * the notes keep their format.
 */
export const RECENT = z.strictObject({
  /** Base name of the file. */
  name: z.string(),
  sha256: SHA256,
  /** When it was opened last, by the page's clock. */
  openedUtc: z.iso.datetime().exactOptional(),
  settings: LOG_SETTINGS.exactOptional(),
  /** Null: none was chosen. */
  facilityId: z.string().nullable().exactOptional(),
  standardId: z.string().exactOptional(),
  stated: STATED.exactOptional(),
  /** Whether a roll corrects its heights, and the receiver's antenna above the ground; null: not said. */
  heights: z.enum(['as-logged', 'from-rollout']).nullable().exactOptional(),
  antennaHeightFt: z.number().nullable().exactOptional(),
  /** The first sentence of its last debrief. */
  summary: z.string().exactOptional(),
});
export type Recent = z.infer<typeof RECENT>;
