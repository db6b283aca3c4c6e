import { describe, expect, it } from 'vitest';
import { importsOf, sourceFiles } from './source-files.ts';

/** Design, section 15: a room may import the rooms before it and the foundations, and nothing after it. */
const ROOMS = [
  'log',
  'track',
  'facility',
  'deviation',
  'approach',
  'standard',
  'grade',
  'debrief',
  'report',
  'sheet',
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

describe('the other rooms', () => {
  it('core serves both hosts: electron never imports the face, and the face never the machine', () => {
    const crossing = [...sourceFiles('electron'), ...sourceFiles('renderer')].flatMap((file) =>
      importsOf(file).filter((target) => {
        const own = file.path.split('/')[0];
        // The bridge between the two is what both know.
        const isBridge = own === 'renderer' && target.startsWith('electron/bridge/');
        return !target.startsWith('core/') && !target.startsWith(`${own}/`) && !isBridge;
      }),
    );
    expect(crossing).toEqual([]);
  });
});
