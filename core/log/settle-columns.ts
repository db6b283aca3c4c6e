import type { CsvColumn } from './choose-columns.ts';
import type { ColumnRole, TimeRole } from './log.ts';
import { isQuantity } from './quantity-rules.ts';

/** How the time of a row is put together, each with its column. */
export type TimePlan =
  | { readonly kind: 'moment'; readonly dateTime: CsvColumn; readonly utcOffset: CsvColumn | null }
  | {
      readonly kind: 'parts';
      readonly date: CsvColumn | null;
      readonly timeOfDay: CsvColumn;
      readonly utcOffset: CsvColumn | null;
    }
  | { readonly kind: 'epoch'; readonly count: CsvColumn }
  | { readonly kind: 'elapsed'; readonly count: CsvColumn };

export interface SettledColumns {
  /** Every column of the file; those that lost against a better one have no role any more. */
  readonly columns: readonly CsvColumn[];
  readonly time: TimePlan | null;
}

/** Lets columns for the same thing compete: the surer one is used, the earlier one when they are equally sure. */
export function settleColumns(candidates: readonly CsvColumn[]): SettledColumns {
  const best = new Map<ColumnRole, CsvColumn>();
  for (const column of candidates) {
    const { role } = column;
    if (role === null) continue;
    const rival = best.get(role);
    if (rival === undefined || column.confidence > rival.confidence) best.set(role, column);
  }
  const time = timePlan(best);
  const used = new Set(time === null ? [] : columnsOf(time));
  const columns = candidates.map((column) => {
    const { role } = column;
    if (role === null || used.has(column)) return column;
    const winner = best.get(role)!;
    if (winner !== column) return unused(column, `"${winner.header}" says it better`);
    if (isQuantity(role)) return column;
    return unused(column, 'the time is taken from other columns');
  });
  return { columns, time };
}

function unused(column: CsvColumn, reason: string): CsvColumn {
  return { ...column, role: null, confidence: 0, why: `${column.why}; ${reason}` };
}

function timePlan(best: ReadonlyMap<ColumnRole, CsvColumn>): TimePlan | null {
  const column = (role: TimeRole): CsvColumn | null => best.get(role) ?? null;
  const [dateTime, epoch, timeOfDay, elapsed] = [
    column('dateTime'),
    column('epoch'),
    column('timeOfDay'),
    column('elapsed'),
  ];
  const plans: (TimePlan | null)[] = [
    dateTime && { kind: 'moment', dateTime, utcOffset: column('utcOffset') },
    epoch && { kind: 'epoch', count: epoch },
    timeOfDay && { kind: 'parts', date: column('date'), timeOfDay, utcOffset: column('utcOffset') },
    elapsed && { kind: 'elapsed', count: elapsed },
  ];
  const possible = plans.filter((plan) => plan !== null);
  const said = possible.find((plan) => columnsOf(plan).some((part) => part.confidence === 1));
  return said ?? possible[0] ?? null;
}

/** The columns that a plan reads. */
function columnsOf(plan: TimePlan): CsvColumn[] {
  if (plan.kind === 'moment') return [plan.dateTime, plan.utcOffset].filter((column) => column !== null);
  if (plan.kind === 'parts')
    return [plan.date, plan.timeOfDay, plan.utcOffset].filter((column) => column !== null);
  return [plan.count];
}
