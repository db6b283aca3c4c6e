import { describe, expect, it } from 'vitest';
import { importsOf, sourceFiles } from './source-files.ts';

/** Design, section 15: a room may import the rooms before it and the foundations, and nothing after it. */
const ROOMS = [
  'log',
  'track',
  'facility',
  'deviation',
  'approach',
  'records',
  'standard',
  'grade',
  'debrief',
  'report',
  'sheet',
  'briefing',
  'progress',
];
const FOUNDATIONS = ['units', 'issue', 'json', 'numeric', 'earth'];
const order = [...FOUNDATIONS, ...ROOMS];

const roomOf = (path: string) => path.split('/')[1]!;

function wrongImports(files: ReturnType<typeof sourceFiles>): string[] {
  return files.flatMap((file) =>
    importsOf(file)
      .filter((target) => {
        if (!target.startsWith('core/')) return true;
        const isEntry = file.path.split('/').length === 2;
        return !isEntry && order.indexOf(roomOf(target)) > order.indexOf(roomOf(file.path));
      })
      .map((target) => `${file.path} imports ${target}`),
  );
}

describe('the rooms of core', () => {
  const files = sourceFiles('core').filter(({ path }) => !path.startsWith('core/types/'));

  it('are the agreed ones', () => {
    const rooms = new Set(
      files.filter(({ path }) => path.split('/').length > 2).map(({ path }) => roomOf(path)),
    );
    expect(order).toEqual(expect.arrayContaining([...rooms]));
  });

  it('import in one direction, and nothing outside core', () => expect(wrongImports(files)).toEqual([]));

  it('would be told of an import that goes back', () => {
    const backwards = { path: 'core/track/gaps.ts', text: "import { x } from '../grade/points.ts';" };
    const outside = { path: 'core/track/gaps.ts', text: "const x = await import('../../electron/x.ts');" };
    expect(wrongImports([backwards])).toHaveLength(1);
    expect(wrongImports([outside])).toHaveLength(1);
  });
});

/**
 * What of the face Node prints as well: the page to hand over is made by the command and by the app from the same
 * components. They take props and draw, and know neither a page nor a host.
 */
const PRINTED = [
  'renderer/hand-over/',
  'renderer/sheet/',
  'renderer/tables/',
  'renderer/progress-page/',
  'renderer/plots/',
  'renderer/briefing/',
];
const isPrinted = (path: string) => PRINTED.some((room) => path.startsWith(room));

function crossingImports(files: ReturnType<typeof sourceFiles>): string[] {
  return files.flatMap((file) => {
    const own = file.path.split('/')[0];
    const allowed = (target: string) =>
      target.startsWith('core/') ||
      target.startsWith(`${own}/`) ||
      // The bridge between the two is what both know.
      (own === 'renderer' && target.startsWith('electron/bridge/')) ||
      (own === 'electron' && isPrinted(target));
    return importsOf(file)
      .filter((target) => !allowed(target))
      .map((target) => `${file.path} imports ${target}`);
  });
}

describe('the other rooms', () => {
  it('core serves both hosts: electron imports of the face what it prints, and the face never the machine', () => {
    expect(crossingImports([...sourceFiles('electron'), ...sourceFiles('renderer')])).toEqual([]);
  });

  it('would be told of a host that imports the rest of the face', () => {
    const path = 'electron/cli/x.ts';
    const text =
      "import { a } from '../../renderer/sheet/a.ts'; import { b } from '../../renderer/views/b.tsx';";
    expect(crossingImports([{ path, text }])).toEqual(['electron/cli/x.ts imports renderer/views/b.tsx']);
    const back = "import { a } from '../../electron/cli/a.ts';";
    expect(crossingImports([{ path: 'renderer/sheet/x.ts', text: back }])).toHaveLength(1);
  });

  it('what is printed draws from its props alone: no state, no effect, no other room of the face', () => {
    const files = PRINTED.flatMap((room) => sourceFiles(room.slice(0, -1)));
    const wrong = files.filter(
      (file) =>
        importsOf(file).some(
          (target) => !target.startsWith('core/') && !isPrinted(target) && target !== 'renderer/base.css',
        ) || /\buse[A-Z]\w*\(|\b(?:document|window|navigator|process)\.|react-aria/.test(file.text),
    );
    expect(files.length).toBeGreaterThan(20);
    expect(wrong.map(({ path }) => path)).toEqual([]);
  });
});
