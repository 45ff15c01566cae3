import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      { test: { name: 'packages', include: ['packages/*/test/**/*.test.ts'] } },
      { test: { name: 'checks', include: ['checks/**/*.test.ts'] } },
      { test: { name: 'scenarios', include: ['scenarios/**/*.test.ts'] } },
      { test: { name: 'tasks', include: ['tasks/**/*.spec.ts'], testTimeout: 60_000, hookTimeout: 120_000, fileParallelism: false } },
    ],
  },
});
