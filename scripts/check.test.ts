import { describe, expect, it } from 'vitest'
import { countTests, type StepResult, totalCounts } from './check/stepResult.ts'
import { steps } from './check/steps.ts'
import { summarise } from './check/summarise.ts'

const results: StepResult[] = [
  { name: 'lint', isGood: true, tookMs: 1234 },
  { name: 'unit', isGood: false, tests: { passed: 7, failed: 2, skipped: 3 }, tookMs: 20_000 },
  { name: 'laws', isGood: true, tests: { passed: 11, failed: 0, skipped: 0 }, tookMs: 500 },
]

describe('the summary of npm run check', () => {
  it('ends with the plain total, after one line a step with its time', () => {
    expect(summarise(results).split('\n')).toEqual([
      'ok      lint     1.2 s',
      'FAILED  unit    20.0 s  7 passed, 2 failed, 3 skipped',
      'ok      laws     0.5 s  11 passed',
      '3 skipped, because what they need is not on this machine',
      '18 passed, 2 failed',
    ])
  })

  it('a step that fails without a failing test is one failure', () => {
    const crashed: StepResult = { name: 'store', isGood: false, tests: { passed: 5, failed: 0, skipped: 0 }, tookMs: 1 }
    const refused: StepResult = { name: 'end to end', isGood: false, notRun: 'no browser', tookMs: 0 }
    expect(totalCounts([crashed, refused])).toEqual({ passed: 5, failed: 2, skipped: 0 })
    expect(summarise([refused])).toContain('not run: no browser')
  })

  it('tests that wait or are only planned count as skipped', () => {
    const report = { numPassedTests: 4, numFailedTests: 1, numPendingTests: 2, numTodoTests: 3 }
    expect(countTests(report)).toEqual({ passed: 4, failed: 1, skipped: 5 })
  })
})

it('npm run check has a step for each promise of the README', () => {
  expect(steps.map(({ name }) => name)).toEqual([
    ...['format', 'lint', 'build', 'types', 'boundaries', 'documents'],
    ...['unit', 'published checks', 'laws', 'store promises', 'end to end', 'accessibility'],
  ])
})
