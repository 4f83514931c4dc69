/** How well a gauge's neighbours could vouch for it: many near by that held much the same. */
import type { Sites } from '../weather/sites.ts'

const NEIGHBOURS = 4
/** At this distance a neighbour costs as much as one that held nothing where the gauge held much. m. */
const FAR_M = 12_000

/**
 * @param caughtMm  what each site's gauge held; NaN where it has not answered
 * @returns per site 0 for perfect support, about -1 for little, lower for less; NaN where it has not answered itself
 */
export function neighbourSupport(sites: Sites, caughtMm: Float64Array): Float64Array {
  return caughtMm.map((heldMm, site) => {
    if (Number.isNaN(heldMm)) return Number.NaN
    const costs: { distanceM: number; cost: number }[] = []
    for (let other = 0; other < sites.count; other++) {
      if (other === site || Number.isNaN(caughtMm[other]!)) continue
      const distanceM = Math.hypot(sites.xM[other]! - sites.xM[site]!, sites.yM[other]! - sites.yM[site]!)
      const unlike = Math.abs(Math.sqrt(caughtMm[other]!) - Math.sqrt(heldMm)) / (0.5 + Math.sqrt(heldMm))
      costs.push({ distanceM, cost: distanceM / FAR_M + unlike })
    }
    const nearest = costs.sort((a, b) => a.distanceM - b.distanceM).slice(0, NEIGHBOURS)
    return nearest.length === 0 ? -9 : -nearest.reduce((sum, { cost }) => sum + cost, 0) / nearest.length
  })
}
