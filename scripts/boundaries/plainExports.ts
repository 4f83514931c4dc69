/** Named exports only, each listed by name: a search for a name finds every place that uses it. */
import type { Module } from './listModules.ts'
import type { Violation } from './violation.ts'

export function exportViolations({ file, defaultExportLines, exportAllLines }: Module): Violation[] {
  return [
    ...defaultExportLines.map((line) => ({
      file,
      line,
      rule: 'default exports are for configuration files only',
      wayOut: 'Export it by its name.',
    })),
    ...exportAllLines.map((line) => ({
      file,
      line,
      rule: '`export *` hides what a file offers',
      wayOut: 'List the names.',
    })),
  ]
}
