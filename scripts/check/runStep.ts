/** Runs one step with its output on the terminal. */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { repositoryRoot } from '../repositoryRoot.ts'
import { countTests, type StepResult, type TestCounts } from './stepResult.ts'
import type { Step } from './steps.ts'

/** @param environment variables besides those of this process, such as CHROMIUM_PATH */
export function runStep(step: Step, environment: Record<string, string>): StepResult {
  const startedMs = performance.now()
  let isGood = step.commands.every((command) => run(command, environment))
  let tests: TestCounts | undefined
  if (step.tests) {
    const answer = runTests(step.tests, environment)
    tests = answer.tests
    isGood = isGood && answer.isGood
  }
  return { name: step.name, isGood, tests, tookMs: performance.now() - startedMs }
}

function runTests(words: string[], environment: Record<string, string>): { isGood: boolean; tests?: TestCounts } {
  const folder = mkdtempSync(join(tmpdir(), 'gaugewright-check-'))
  const report = join(folder, 'tests.json')
  try {
    const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
    const isGood = run(['vitest', 'run', ...words, ...reporters], environment)
    if (!existsSync(report)) return { isGood: false }
    return { isGood, tests: countTests(JSON.parse(readFileSync(report, 'utf8'))) }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

function run([program, ...words]: string[], environment: Record<string, string>): boolean {
  const path = [join(repositoryRoot, 'node_modules', '.bin'), process.env.PATH].join(delimiter)
  const { status, error } = spawnSync(program!, words, {
    cwd: repositoryRoot,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...environment, PATH: path },
    shell: process.platform === 'win32',
  })
  if (error) console.error(`${program} could not be started: ${error.message}`)
  return status === 0
}
