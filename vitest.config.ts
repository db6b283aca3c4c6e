import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
    coverage: {
      provider: 'v8',
      include: ['core/**/*.ts'],
      exclude: ['core/types/**'],
      reporter: ['text-summary', 'text', 'json-summary'],
      thresholds: { lines: 95, branches: 95 },
    },
  },
});
