import type { Debrief } from '../../core/debrief/debrief.ts';
import type { Issue } from '../../core/issue/issue.ts';
import type { LogSettings } from '../../core/log/log.ts';
import type { Stated } from '../../core/standard/stated.ts';

/** What a log and the names that may stand in a text go by instead. */
export interface Redaction {
  readonly log: { readonly name: string; readonly sha256: string };
  readonly standIns: ReadonlyMap<string, string>;
  /** Whether the log itself goes with it: else nothing is told of what stands in it. */
  readonly hasLogs: boolean;
}

const LEFT_OUT = 'left out';

/** A debrief without what somebody wrote, and with other names for its log and for whoever a text names. */
export function redactedDebrief(debrief: Debrief, { log, standIns, hasLogs }: Redaction): Debrief {
  const issues = hasLogs ? debrief.log.issues : debrief.log.issues.map(unquoted);
  const approaches = debrief.approaches.map((approach) => ({
    ...approach,
    stated: redactedStated(approach.stated),
    criteria: approach.criteria.map((criterion) => ({
      ...criterion,
      allowed: criterion.allowed && { ...criterion.allowed, reason: LEFT_OUT },
    })),
  }));
  const renamed = {
    ...debrief,
    log: { ...debrief.log, file: log.name, sha256: log.sha256, issues },
    approaches,
  };
  return { ...(withoutNames(renamed, standIns) as Debrief), facility: debrief.facility };
}

/** What was stated, in figures and choices alone. */
export function redactedStated<S extends Pick<Stated, 'turbulence' | 'allowances'>>(stated: S): S {
  const allowances = stated.allowances.map((allowance) => ({ ...allowance, reason: LEFT_OUT }));
  return { ...stated, turbulence: null, allowances };
}

/** Without the log's headers, by which columns and units are named. */
export function redactedSettings(settings: LogSettings): LogSettings {
  return Object.fromEntries(Object.entries(settings).filter(([key]) => key !== 'columns' && key !== 'units'));
}

/** Any plain value with the names replaced in its texts: in prose, and in what a standard of one's own is called. */
export function withoutNames(value: unknown, standIns: ReadonlyMap<string, string>, key = ''): unknown {
  if (typeof value === 'string')
    return value.includes(' ') || NAMED_BY_ITS_MAKER.has(key) ? textWithoutNames(value, standIns) : value;
  if (Array.isArray(value)) return value.map((one) => withoutNames(one, standIns, key));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, one]) => [name, withoutNames(one, standIns, name)]),
  );
}

const NAMED_BY_ITS_MAKER: ReadonlySet<string> = new Set(['title', 'source']);

/** Whole words alone, in whatever case. */
export function textWithoutNames(text: string, standIns: ReadonlyMap<string, string>): string {
  const lower = text.toLowerCase();
  return [...standIns].reduce(
    (written, [name, standIn]) =>
      lower.includes(name.toLowerCase())
        ? written.replace(
            new RegExp(`(?<![\\p{L}\\p{N}])${escaped(name)}(?![\\p{L}\\p{N}])`, 'giu'),
            () => standIn,
          )
        : written,
    text,
  );
}

function escaped(name: string): string {
  return name.replaceAll(/[$()*+./?[\\\]^{|}-]/g, String.raw`\$&`);
}

/** An issue may quote what stands in the log, as its headers. */
function unquoted(issue: Issue): Issue {
  const without = (text: string) => text.replace(/".*"/su, '"…"');
  return { ...issue, message: without(issue.message), tip: issue.tip && without(issue.tip) };
}
