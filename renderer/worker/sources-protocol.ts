import type { Issue } from '../../core/issue/issue.ts';
import type { LandedEnd } from '../../core/records/draft-from-runway.ts';
import type { Drafted } from '../../core/records/drafted.ts';
import type { Difference } from '../../core/records/differences.ts';
import type { ListedIls } from '../../core/records/ils-listing.ts';
import type { Choices } from '../../core/records/merged.ts';
import type { RunwayRow, RunwayTable } from '../../core/records/runway-table.ts';

/** What a page shows of the official records that it has. */
export interface RecordsSummary {
  readonly cycle: string | null;
  /** Days of the cycle, the last included; null where it is not known. */
  readonly days: { readonly first: string; readonly last: string } | null;
  readonly airports: number;
  /** With a glideslope. */
  readonly approaches: number;
  readonly unreadable: number;
  /** That they are not in force today among them. */
  readonly issues: readonly Issue[];
}

/** One value of a draft as it is shown. */
interface DraftedValue {
  readonly path: string;
  readonly name: string;
  readonly value: string;
  readonly origin: string;
}

/** A facility that a source gives: what it says, and the file that it makes. */
export interface Draft {
  readonly name: string;
  readonly drafted: Drafted;
  readonly values: readonly DraftedValue[];
  readonly text: string;
}

/** What the page asks of the worker about sources of facilities, and what it answers. */
export interface SourceWork {
  /** Reads a file of records, or takes an index that was made before. `text`: the index, to be kept. */
  records: {
    in: { readonly from: File | string; readonly day: string };
    out: { readonly summary: RecordsSummary; readonly text: string };
  };
  /** The first localizers that have these words, and how many there are. */
  localizers: {
    in: { readonly words: string };
    out: { readonly total: number; readonly first: readonly ListedIls[] };
  };
  recordDraft: {
    in: { readonly airport: string; readonly localizer: string; readonly day: string };
    out: Draft;
  };
  runways: {
    in: { readonly file: File; readonly airport: string | null };
    out: { readonly table: RunwayTable; readonly issues: readonly Issue[] };
  };
  runwayDraft: { in: { readonly row: RunwayRow; readonly end: LandedEnd }; out: Draft };
  /** Of each runway that a log landed on. */
  landingDrafts: { in: { readonly log: string }; out: readonly Draft[] };
  /** Where a draft and a facility of the user's own do not agree. */
  differences: { in: { readonly draft: Drafted; readonly facility: string }; out: readonly Difference[] };
  /** The draft with what the facility says besides, and as chosen where both do. */
  merge: {
    in: { readonly draft: Drafted; readonly facility: string; readonly choices: Choices };
    out: Draft;
  };
}
