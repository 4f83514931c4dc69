import { defineConfig } from 'vitest/config'

const accessibility = 'packages/web/test/e2e/**/accessibility*.test.ts'

/** Tests in a real browser, against the built screens. They share the machine, so files run one after the other. */
export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    testTimeout: 120_000,
    hookTimeout: 180_000,
    fileParallelism: false,
    globalSetup: ['packages/web/test/e2e/makeDemoOnce.ts'],
    projects: [
      {
        extends: true,
        test: { name: 'end-to-end', include: ['packages/*/test/e2e/**/*.test.ts'], exclude: [accessibility] },
      },
      { extends: true, test: { name: 'accessibility', include: [accessibility] } },
    ],
  },
})
