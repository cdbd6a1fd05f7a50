import { defineConfig } from 'vitest/config';

/** The lane that needs more than Node, xmllint and git: npm run test:tools. */
export default defineConfig({
  test: {
    include: ['tests/tools/**/*.tools.ts'],
    globalSetup: 'tests/tools/needs.ts',
    maxWorkers: 2,
    testTimeout: 60_000,
  },
});
