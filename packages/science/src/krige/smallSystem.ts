/**
 * Small kriging systems, solved millions of times a morning: covariances of up to 60 neighbours with one another and
 * with the place, and their values. Larger systems, and those with other sides, go to cholesky.ts.
 */
import { plainSystem } from './plainSystem.ts'
import { simdSystem } from './simdSystem.ts'
import type { SmallSystem } from './systemRoom.ts'

let chosen: SmallSystem | undefined

/** The fastest kernel that runs here; why there are two: docs/decisions/0012. */
export function smallSystem(): SmallSystem {
  chosen ??= simdSystem() ?? plainSystem()
  return chosen
}
