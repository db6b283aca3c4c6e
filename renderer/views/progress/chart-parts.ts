/** How the charts of progress are drawn, all in one manner. */
export const AXIS = {
  tickLine: false,
  stroke: 'var(--line)',
  tick: { fill: 'var(--quiet)', fontSize: 11 },
} as const;

export const DOT = { r: 3.5, fill: 'var(--sheet)', stroke: 'var(--series)', strokeWidth: 1.75 } as const;
