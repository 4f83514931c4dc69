/** One line a step with its time, then how many tests were skipped, then the plain total as the last line. */
import { type StepResult, totalCounts } from './stepResult.ts'

export function summarise(results: StepResult[]): string {
  const width = Math.max(...results.map(({ name }) => name.length))
  const rows = results.map((result) => {
    const seconds = `${(result.tookMs / 1000).toFixed(1)} s`.padStart(8)
    return `${result.isGood ? 'ok    ' : 'FAILED'}  ${result.name.padEnd(width)}  ${seconds}  ${wordTests(result)}`.trimEnd()
  })
  const { passed, failed, skipped } = totalCounts(results)
  const skippedLine = skipped === 0 ? [] : [`${skipped} skipped, because what they need is not on this machine`]
  return [...rows, ...skippedLine, `${passed} passed, ${failed} failed`].join('\n')
}

function wordTests({ notRun, tests }: StepResult): string {
  if (notRun !== undefined) return `not run: ${notRun}`
  if (!tests) return ''
  const words = [`${tests.passed} passed`]
  if (tests.failed > 0) words.push(`${tests.failed} failed`)
  if (tests.skipped > 0) words.push(`${tests.skipped} skipped`)
  return words.join(', ')
}
