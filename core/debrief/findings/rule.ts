import type { Span } from '../../numeric/polyline.ts';
import type { Asked, Needle } from './asked.ts';

/** Numbers by name, each with its unit in its name. */
export type Evidence = Readonly<Record<string, number>>;

/** What a rule found: the numbers, and from when to when they are of. */
export interface Found extends Span {
  readonly evidence: Evidence;
}

/** A number that a rule turns on, and why it is that number. */
export interface Threshold {
  readonly value: number;
  readonly unit: string;
  readonly why: string;
}

export function threshold(value: number, unit: string, why: string): Threshold {
  return { value, unit, why };
}

/**
 * One thing that an instructor would say, as data: when it is said, in what words, and what to practise. A rule that
 * cannot tell, for want of data or because an error is as large as the question, finds nothing.
 */
export interface FindingRule {
  readonly id: string;
  readonly kind: 'fault' | 'praise';
  readonly title: string;
  readonly thresholds: Readonly<Record<string, Threshold>>;
  /** Told of where this needle stood: only where it surely stood beyond half scale within the span. */
  readonly stoodOff: Needle | null;
  /** Of the pilot's own hand on the controls: not told of a coupled approach. */
  readonly byHand: boolean;
  /** Not told where one of these is told of the same time: it is their consequence, or the same seen twice. */
  readonly coveredBy: readonly string[];
  readonly find: (asked: Asked) => Found | null;
  /** Said to the student: the moment, what was flown, what was needed. */
  readonly text: (evidence: Evidence) => string;
  readonly practise: string | null;
}
