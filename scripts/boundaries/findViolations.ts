/** All walls, over all packages. */

import { importCycles } from './importCycles.ts'
import { layerViolations } from './layerWalls.ts'
import { listModules } from './listModules.ts'
import { packageViolations } from './packageWalls.ts'
import { exportViolations } from './plainExports.ts'
import { impurities } from './pureScience.ts'
import type { Violation } from './violation.ts'

/** @param root the folder that holds `packages/` */
export function findViolations(root: string): { violations: Violation[]; fileCount: number } {
  const modules = listModules(root)
  const violations = [
    ...modules.flatMap((module) => [
      ...packageViolations(root, module),
      ...layerViolations(module),
      ...impurities(module),
      ...exportViolations(module),
    ]),
    ...importCycles(modules),
  ]
  return { violations, fileCount: modules.length }
}
