import type { Log, LogColumn } from '../log/log.ts';
import { METRES_PER_FOOT } from '../units/units.ts';

/** Kinds of receiver that positions come from, by how far they are off. */
export const RECEIVER_KINDS = ['augmented', 'plain', 'phone'] as const;
export type ReceiverKind = (typeof RECEIVER_KINDS)[number];

/** What is known of the receiver of a log before any of its columns is asked. */
export interface Receiver {
  readonly kind: ReceiverKind;
  /** Whether the user said so; else it is told by what else the log holds. */
  readonly isStated: boolean;
  /** Share of errors that a column of accuracies is meant to hold. */
  readonly accuracyShare: 0.68 | 0.95;
}

/** 95 % of a kind's errors. */
export interface ReceiverClass {
  /** Radius that holds them, feet. */
  readonly horizontalFt: number;
  /** Half-width that holds them, feet. */
  readonly verticalFt: number;
  /** Of the part that changes in flight: first order, half of the variance. The other half stays (ours). */
  readonly timeConstantS: number;
}

/**
 * The published classes. Augmented: 1.06 and 1.79 m, the worst site of FAA WAAS Performance Analysis Report 10
 * (published). Plain: 8 and 13 m, global average, GPS SPS Performance Standard, 5th edition (2020), table 3.8-3
 * (second-hand). A phone: half as much again, which also holds a kind of height that is not quite the one it says
 * (ours). Time constants: ours.
 */
export const RECEIVER_CLASSES: Readonly<Record<ReceiverKind, ReceiverClass>> = {
  augmented: metres(1.06, 1.79, 200),
  plain: metres(8, 13, 300),
  phone: metres(12, 20, 300),
};

function metres(horizontalM: number, verticalM: number, timeConstantS: number): ReceiverClass {
  return {
    horizontalFt: horizontalM / METRES_PER_FOOT,
    verticalFt: verticalM / METRES_PER_FOOT,
    timeConstantS,
  };
}

/** What only equipment that is built into an aircraft records. */
const INSTALLED = ['airspeedIndicatedKt', 'airspeedTrueKt', 'engineRpm', 'manifoldPressureInHg'] as const;
const FIGURE_OF_MERIT = /fom|merit/i;

/**
 * The receiver of a log: as the user says; else augmented where the log has protection levels, which nothing else
 * gives, or airspeed or engine, which only installed equipment records, and that is augmented as a rule (common
 * practice, no source); else a phone.
 */
export function receiverOf(
  { values, columns }: Pick<Log, 'values' | 'columns'>,
  stated: ReceiverKind | null,
): Receiver {
  const isInstalled = INSTALLED.some((quantity) => values[quantity] !== undefined);
  const isProtected = values.verticalProtectionM !== undefined || values.horizontalProtectionM !== undefined;
  return {
    kind: stated ?? (isInstalled || isProtected ? 'augmented' : 'phone'),
    isStated: stated !== null,
    accuracyShare: columns.some(isFigureOfMerit) ? 0.95 : 0.68,
  };
}

/**
 * A figure of merit is a 95 % figure (RTCA DO-229, from memory); what a phone calls its accuracy holds 68 % (the
 * documentation of the common phone systems, from memory).
 */
function isFigureOfMerit({ role, header }: LogColumn): boolean {
  return (role === 'horizontalAccuracyM' || role === 'verticalAccuracyM') && FIGURE_OF_MERIT.test(header);
}
