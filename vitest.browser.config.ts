import { defineConfig } from 'vitest/config';

/** The lane that looks at reports in a real browser: npm run test:browser. */
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.browser.ts'],
    // One browser at a time is fast enough, and leaves a core for it.
    maxWorkers: 1,
    testTimeout: 120_000,
    hookTimeout: 60_000,
  },
});
