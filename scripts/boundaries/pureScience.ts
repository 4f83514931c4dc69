/** Science tells no time, tosses no coin and reaches nothing outside: the same input gives the same output anywhere. */
import type { Module } from './listModules.ts'
import type { Violation } from './violation.ts'

const wayOutOf: Record<string, string> = {
  'Math.random': 'Take `random: () => number` as an argument and seed it outside.',
  'Temporal.Now': 'Take the instant as an argument; packages/desk has a clock.',
  Date: 'Take an epoch day or an instant as an argument; packages/desk has a clock.',
  console: 'Return the value; a door prints it.',
}

/** @returns the violations of one module; none for tests and for packages other than science */
export function impurities(module: Module): Violation[] {
  if (module.packageName !== 'science' || module.isTest) return []
  return module.worldly.map(({ name, line }) => ({
    file: module.file,
    line,
    rule: `science may not use ${name}`,
    wayOut: wayOutOf[name] ?? 'Pass the value in, or move the code to packages/desk.',
  }))
}
