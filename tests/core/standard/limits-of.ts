import type { Limit, Standard } from '../../../core/standard/standard.ts';

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

/** Every limit of a standard with its dotted path, wherever it stands. */
export function limitsOf(standard: Standard): [path: string, limit: Limit][] {
  const found: [string, Limit][] = [];
  const walk = (group: Record<string, unknown>, above: string) => {
    if ('lower' in group) found.push([above, group as unknown as Limit]);
    for (const [key, value] of Object.entries(group))
      if (isGroup(value)) walk(value, above === '' ? key : `${above}.${key}`);
  };
  walk({ ...standard }, '');
  return found;
}

/** The value at a dotted path. */
export function valueAt(standard: Standard, path: string): unknown {
  let at: unknown = standard;
  for (const key of path.split('.')) at = isGroup(at) ? at[key] : undefined;
  return at;
}
