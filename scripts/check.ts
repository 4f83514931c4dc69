/**
 * `npm run check`: everything that must hold, as named steps; `npm run check -- lint unit` runs only those.
 * The last line is `N passed, N failed`; the exit code is 1 when anything failed.
 */
import { runStep } from './check/runStep.ts'
import type { StepResult } from './check/stepResult.ts'
import { steps } from './check/steps.ts'
import { summarise } from './check/summarise.ts'
import { need } from './system/need.ts'

const asked = process.argv.slice(2)
const unknown = asked.find((name) => !steps.some((step) => step.name === name))
if (unknown !== undefined) {
  console.error(`There is no step "${unknown}". Steps: ${steps.map(({ name }) => `"${name}"`).join(', ')}.`)
  process.exit(2)
}
const chosen = steps.filter(({ name }) => asked.length === 0 || asked.includes(name))

const node = need('node')
if (!node.ok) {
  console.error(node.advice)
  process.exit(1)
}
const browser = chosen.some(({ inBrowser }) => inBrowser) ? need('chromium') : node

const results: StepResult[] = []
for (const step of chosen) {
  console.log(`\n=== ${step.name}`)
  const hindrance = step.inBrowser ? hindranceOfBrowserTests() : undefined
  if (hindrance !== undefined) {
    results.push({ name: step.name, isGood: false, notRun: hindrance, tookMs: 0 })
    continue
  }
  results.push(runStep(step, browser.ok ? browser.environment : {}))
}
console.log(`\n${summarise(results)}`)
process.exitCode = results.every(({ isGood }) => isGood) ? 0 : 1

function hindranceOfBrowserTests(): string | undefined {
  if (!browser.ok) return browser.advice
  return results.some(({ name, isGood }) => name === 'build' && !isGood) ? 'the build failed' : undefined
}
