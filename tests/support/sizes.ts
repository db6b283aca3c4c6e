import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';

/** How long files and functions of a room are, and how much of it is said in comments. */
export interface Sizes {
  readonly room: string;
  readonly files: readonly number[];
  readonly functions: readonly number[];
  /** Lines that are comments alone, of all that are not empty. */
  readonly commentShare: number;
}

const FUNCTIONS = new Set(['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression']);

export function sizesOf(room: string): Sizes {
  const texts = sourcesBelow(room).map((path) => ({ path, text: readFileSync(path, 'utf8') }));
  const lines = texts.flatMap(({ text }) =>
    text
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
  );
  const comments = lines.filter((line) => /^(\/\/|\/\*|\*)/.test(line));
  return {
    room,
    files: texts.map(({ text }) => text.trimEnd().split('\n').length).sort((a, b) => a - b),
    functions: texts.flatMap(({ path, text }) => functionsIn(path, text)).sort((a, b) => a - b),
    commentShare: comments.length / lines.length,
  };
}

/** A table of them as Markdown. */
export function sizesTable(all: readonly Sizes[]): string {
  const row = ({ room, files, functions, commentShare }: Sizes) =>
    `| ${room} | ${files.length} | ${at(files, 0.5)} / ${at(files, 0.9)} / ${files.at(-1)} | ${functions.length} | ${at(functions, 0.5)} / ${at(functions, 0.9)} / ${functions.at(-1)} | ${Math.round(commentShare * 100)} % |`;
  return [
    '| room | files | lines: median / 90 % / most | functions | lines: median / 90 % / most | comments |',
    '| --- | --- | --- | --- | --- | --- |',
    ...all.map(row),
  ].join('\n');
}

function at(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;
}

function sourcesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'))
    .map((name) => join(folder, name));
}

/** Lines of every function with a body in braces; one within another counts by itself too. */
function functionsIn(path: string, text: string): number[] {
  const { program } = parseSync(path, text);
  const found: number[] = [];
  const look = (node: unknown): void => {
    if (Array.isArray(node)) for (const one of node) look(one);
    else if (typeof node === 'object' && node !== null) {
      const { type, start, end, body } = node as {
        type?: string;
        start: number;
        end: number;
        body?: { type?: string };
      };
      if (FUNCTIONS.has(type ?? '') && body?.type === 'BlockStatement')
        found.push(text.slice(start, end).split('\n').length);
      for (const value of Object.values(node)) look(value);
    }
  };
  look(program);
  return found;
}
