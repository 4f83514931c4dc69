/** How one step went. Tests are counted where the step runs tests. */
export interface StepResult {
  name: string
  isGood: boolean
  /** Why it was not run, if it was not. */
  notRun?: string
  tests?: TestCounts
  tookMs: number
}

export interface TestCounts {
  passed: number
  failed: number
  skipped: number
}

/** @param report what vitest's JSON reporter writes */
export function countTests(report: {
  numPassedTests: number
  numFailedTests: number
  numPendingTests: number
  numTodoTests: number
}): TestCounts {
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = report
  return { passed: numPassedTests, failed: numFailedTests, skipped: numPendingTests + numTodoTests }
}

/** Over all steps. A step that failed without a failing test (a format, a crash) counts as one failure. */
export function totalCounts(results: StepResult[]): TestCounts {
  const total: TestCounts = { passed: 0, failed: 0, skipped: 0 }
  for (const { isGood, tests } of results) {
    total.passed += tests?.passed ?? 0
    total.skipped += tests?.skipped ?? 0
    total.failed += Math.max(tests?.failed ?? 0, isGood ? 0 : 1)
  }
  return total
}
