import type { LogColumn } from './log.ts';

/**
 * A short key that is the same for every log with the same header, so that a mapping can be remembered for it.
 * FNV-1a over the header texts (32 bits, twice with different starts; Fowler, Noll and Vo; from memory): no secret,
 * only a name.
 */
export function headerKey(columns: readonly Pick<LogColumn, 'header'>[]): string {
  const text = columns.map((column) => column.header.trim().toLowerCase()).join('\n');
  return [0x81_1c_9d_c5, 0x12_34_56_78]
    .map((start) => fnv(text, start).toString(16).padStart(8, '0'))
    .join('');
}

function fnv(text: string, start: number): number {
  let hash = start;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01_00_01_93);
  return hash >>> 0;
}
