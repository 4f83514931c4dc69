import { defineConfig } from 'vitest/config'

const accessibility = 'packages/web/test/e2e/**/accessibility*.test.ts'

/**
 * Tests in a real browser, against the built screens. What is timed needs the machine for itself: those files run one after
 * the other; what axe looks at may wait, and two files run side by side.
 */
export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    testTimeout: 120_000,
    hookTimeout: 180_000,
    maxWorkers: 2,
    globalSetup: ['packages/web/test/e2e/makeDemoOnce.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'end-to-end',
          include: ['packages/*/test/e2e/**/*.test.ts'],
          exclude: [accessibility],
          fileParallelism: false,
        },
      },
      { extends: true, test: { name: 'accessibility', include: [accessibility] } },
    ],
  },
})
