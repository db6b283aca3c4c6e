import type { Remark } from '../standard/stated.ts';

/** What an instructor would say of one thing that was flown, where the log tells it for sure. */
export interface DebriefFinding {
  readonly id: string;
  readonly kind: 'fault' | 'praise';
  /** From 1 within its kind; what ranks beyond 3 is folded away where it is shown. */
  readonly rank: number;
  readonly title: string;
  readonly text: string;
  /** One exercise; null for praise. */
  readonly practise: string | null;
  /** The numbers that it stands on, each with its unit in its name. */
  readonly evidence: Readonly<Record<string, number>>;
  readonly fromUtc: string;
  readonly toUtc: string;
  /** What the people of the flight say to it; null: nothing. */
  readonly remark: FindingRemark | null;
}

export type FindingRemark = Pick<Remark, 'verdict' | 'words' | 'answer'>;
