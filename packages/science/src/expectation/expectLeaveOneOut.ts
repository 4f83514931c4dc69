/**
 * What each gauge should have caught, from all other gauges and its own climate: every gauge on every day asked for,
 * whether it reported or not. The work was done by judge(); this reads it off.
 */
import type { Judgement } from '../mistakes/judgement.ts'
import { type ExpectAsk, type Expectations, expectationWriter, openExpectations } from './expectations.ts'
import { predictiveAt } from './predictive.ts'

/**
 * @param judgement  of the days asked for, with believingModel() where expectations are the aim; days before its own
 *   range give context and are less settled
 * @returns a place for each gauge, in the order of the gauges
 * @throws {ScienceError} OUT_OF_DOMAIN for levels that do not ascend between 0 and 1
 */
export function expectLeaveOneOut(judgement: Judgement, ask: ExpectAsk): Expectations {
  const { latent } = judgement
  const n = latent.table.gaugeCount
  const out = openExpectations(n, latent.table, ask)
  const write = expectationWriter(out)
  const firstRow = out.firstDay - latent.table.firstDay
  for (let d = 0; d < out.dayCount; d++) {
    for (let g = 0; g < n; g++) {
      write(d * n + g, predictiveAt(latent, firstRow + d, g))
      out.neighbourCount[d * n + g] = latent.used[(firstRow + d) * n + g]!
    }
  }
  return out
}
