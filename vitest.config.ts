import { defineConfig } from 'vitest/config';

const node = { environment: 'node' as const, testTimeout: 60_000, hookTimeout: 60_000 };
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          ...node,
          name: 'unit',
          include: ['{engine,sheets,documents,intake,kernels,examples,web,house}/**/*.test.{ts,tsx}'],
        },
      },
      {
        test: {
          ...node,
          name: 'store',
          include: ['{store,server,cli}/**/*.test.ts'],
          globalSetup: ['store/testing/global-setup.ts'],
        },
      },
      {
        test: {
          ...node,
          name: 'browser',
          include: ['e2e/**/*.test.ts'],
          testTimeout: 180_000,
          hookTimeout: 180_000,
          fileParallelism: false,
          expect: { poll: { timeout: 10_000 } },
        },
      },
    ],
  },
});
