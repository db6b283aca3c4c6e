import type { Debrief } from '../../core/debrief/debrief.ts';
import type { Issue } from '../../core/issue/issue.ts';
import type { LogSettings } from '../../core/log/log.ts';
import type { Stated } from '../../core/standard/stated.ts';
import type { StandIns } from './stand-ins.ts';

/** What goes by another name. */
export interface OtherNames {
  /** For whatever may stand in a text. */
  readonly standIns: StandIns;
  /** For ids that somebody chose: of standards of one's own, and of the criteria in these. */
  readonly ownIds: ReadonlyMap<string, string>;
}

/** What a log and all else that is named go by instead. */
export interface Redaction extends OtherNames {
  readonly log: { readonly name: string; readonly sha256: string };
  /** Whether the log itself goes with it: else nothing is told of what stands in it. */
  readonly hasLogs: boolean;
}

const LEFT_OUT = 'left out';

/** A debrief without what somebody wrote, and with other names for its log and for whoever a text names. */
export function redactedDebrief(debrief: Debrief, { log, hasLogs, ...names }: Redaction): Debrief {
  const issues = hasLogs ? debrief.log.issues : debrief.log.issues.map(unquoted);
  const approaches = debrief.approaches.map((approach) => ({
    ...approach,
    stated: redactedStated(approach.stated),
    criteria: approach.criteria.map((criterion) => ({
      ...criterion,
      allowed: criterion.allowed && { ...criterion.allowed, reason: LEFT_OUT },
    })),
    findings: approach.findings.map((finding) => ({ ...finding, remark: null })),
  }));
  const renamed = {
    ...debrief,
    log: { ...debrief.log, file: log.name, sha256: log.sha256, issues },
    approaches,
  };
  return { ...(withoutNames(renamed, names) as Debrief), facility: debrief.facility };
}

/** What was stated, in figures and choices alone. */
export function redactedStated<S extends Pick<Stated, 'turbulence' | 'allowances'>>(stated: S): S {
  const allowances = stated.allowances.map((allowance) => ({ ...allowance, reason: LEFT_OUT }));
  // What was said to findings is somebody's own words; older ones hold none.
  const remarks = 'remarks' in stated ? { remarks: [] } : {};
  return { ...stated, turbulence: null, allowances, ...remarks };
}

/** Without the log's headers, by which columns and units are named. */
export function redactedSettings(settings: LogSettings): LogSettings {
  return Object.fromEntries(Object.entries(settings).filter(([key]) => key !== 'columns' && key !== 'units'));
}

/** Any plain value with other names in its texts: in prose, and in what a standard of one's own is called. */
export function withoutNames(value: unknown, names: OtherNames, key = ''): unknown {
  if (typeof value === 'string') return withoutName(value, names, key);
  if (Array.isArray(value)) return value.map((one) => withoutNames(one, names, key));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, one]) => [name, withoutNames(one, names, name)]),
  );
}

const NAMED_BY_ITS_MAKER: ReadonlySet<string> = new Set(['title', 'source']);
const HOLDS_AN_ID: ReadonlySet<string> = new Set(['id', 'criterion']);

function withoutName(text: string, { standIns, ownIds }: OtherNames, key: string): string {
  if (HOLDS_AN_ID.has(key)) return ownIds.get(text) ?? text;
  return text.includes(' ') || NAMED_BY_ITS_MAKER.has(key) ? standIns.in(text) : text;
}

/** An issue may quote what stands in the log, as its headers. */
function unquoted(issue: Issue): Issue {
  const without = (text: string) => text.replace(/".*"/su, '"…"');
  return { ...issue, message: without(issue.message), tip: issue.tip && without(issue.tip) };
}
