import { defineConfig } from 'vitest/config';
import { embedReference } from './scripts/embed-reference.mjs';

// Every project imports the reference tables as one JSON file. Writing it here, before any test is collected,
// lets `npx vitest run packages/x` work in a fresh clone.
await embedReference();

export default defineConfig({
  test: {
    reporters: ['default', './scripts/closing-line.ts'],
    projects: [
      { test: { name: 'packages', include: ['packages/*/test/**/*.test.{ts,tsx}'], testTimeout: 60_000 } },
      { test: { name: 'checks', include: ['checks/**/*.test.ts'], testTimeout: 120_000 } },
      { test: { name: 'scenarios', include: ['scenarios/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 60_000 } },
      {
        test: {
          name: 'tasks',
          include: ['tasks/**/*.spec.ts'],
          globalSetup: ['tasks/unpack-browser.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
