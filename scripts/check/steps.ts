/** Everything that must hold before a change is shared, in the order in which a fault is cheapest to find. */
export interface Step {
  name: string
  /** Programs with their words, run one after the other until one fails. */
  commands: string[][]
  /** Arguments for vitest, whose tests are counted. */
  tests?: string[]
  /** Runs in Chromium, on what the step "build" made. */
  inBrowser?: boolean
}

const tsx = (script: string) => ['tsx', `scripts/${script}`]
const browserTests = ['--config', 'vitest.e2e.config.ts']

export const steps: Step[] = [
  { name: 'format', commands: [['biome', 'format', '.']] },
  { name: 'lint', commands: [['biome', 'lint', '--error-on-warnings', '.']] },
  { name: 'build', commands: [['npm', 'run', '--silent', 'build']] },
  {
    name: 'types',
    commands: [
      ['tsc', '-p', 'tsconfig.tests.json'],
      ['tsc', '-p', 'packages/web'],
    ],
  },
  { name: 'boundaries', commands: [tsx('checkBoundaries.ts')] },
  { name: 'documents', commands: [tsx('checkDocs.ts')] },
  { name: 'unit', commands: [], tests: ['--project', 'unit'] },
  { name: 'published checks', commands: [], tests: ['--project', 'published'] },
  { name: 'laws', commands: [], tests: ['--project', 'laws'] },
  { name: 'store promises', commands: [], tests: ['--project', 'store'] },
  { name: 'end to end', commands: [], tests: [...browserTests, '--project', 'end-to-end'], inBrowser: true },
  { name: 'accessibility', commands: [], tests: [...browserTests, '--project', 'accessibility'], inBrowser: true },
]
