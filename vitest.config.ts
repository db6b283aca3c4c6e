import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    testTimeout: 60_000,
    // As long for what a test stands on, which makes a library of thousands in some: by itself 10 s.
    hookTimeout: 60_000,
    // One a core: by itself vitest leaves one of them idle.
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: 'pure',
          include: ['tests/{core,fuzz,house,renderer,support}/**/*.test.ts'],
          // Nothing in them changes what another file sees, so they need not load the same modules 200 times.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'machine', include: ['tests/electron/**/*.test.ts'] } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/e2e/**/*.test.ts'],
          globalSetup: 'tests/e2e/find-browser.ts',
          // A machine that has other work needs a while for what is done in a moment.
          expect: { poll: { timeout: 20_000 } },
        },
      },
    ],
    // Styles that are read as text, as the page to hand over reads them; by itself vitest makes them empty.
    css: { include: [/\.css\?raw$/] },
    coverage: {
      provider: 'v8',
      include: ['core/**/*.ts'],
      exclude: ['core/types/**'],
      reporter: ['text-summary', 'text', 'json-summary'],
      thresholds: { lines: 95, branches: 95 },
    },
  },
});
