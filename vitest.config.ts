import { defineConfig } from 'vitest/config'

const published = 'packages/*/test/published/**/*.test.ts'
const laws = 'packages/*/test/laws/**/*.test.ts'
const store = 'packages/desk/src/store/**/*.test.ts'
const browser = 'packages/*/test/e2e/**'
const project = (name: string, include: string[], exclude: string[] = []) => ({
  extends: true as const,
  test: { name, include, exclude: ['**/node_modules/**', '**/dist/**', ...exclude] },
})

/** Tests without a browser, each in exactly one project. Those with one: vitest.e2e.config.ts. */
export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    testTimeout: 30_000,
    maxWorkers: 2,
    projects: [
      project(
        'unit',
        ['packages/*/{src,test}/**/*.test.{ts,tsx}', 'scripts/**/*.test.ts'],
        [published, laws, store, browser],
      ),
      project('published', [published]),
      project('laws', [laws]),
      project('store', [store]),
    ],
  },
})
