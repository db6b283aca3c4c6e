import { afterEach, expect, it, vi } from 'vitest';
import { download } from '../../renderer/state/download.ts';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

it('saves under a whole name, of which a dot ends nothing', () => {
  vi.useFakeTimers();
  const link = { href: '', download: '', click: vi.fn() };
  vi.stubGlobal('document', { createElement: () => link });
  download('J. R. Teal', { ending: 'progress.csv', type: 'text/csv', text: 'a,b' });
  expect(link.download).toBe('J. R. Teal.progress.csv');
  expect(link.href).toMatch(/^blob:/);
  expect(link.click).toHaveBeenCalledOnce();
});
