import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
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
