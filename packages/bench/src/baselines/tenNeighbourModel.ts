/**
 * Ten-neighbour model check: from the ten nearest gauges of the day, a logistic model of wet or dry and a quasi-binomial
 * model of the amount, both on latitude, longitude and elevation; a reading is suspect when all neighbours disagree on
 * wet or dry, when it is ten times or a tenth of the estimate, or when it is dry (wet) although wet (dry) is sure.
 * Source: [SerranoNotivoli2017]. Score = |log10((reading + 0.1) / (estimate + 0.1))|, plus 1 for each rule broken.
 */
import type { Baseline } from './baseline.ts'
import { fitBinomial } from './fitBinomial.ts'
import { nearestGauges } from './nearestGauges.ts'

const neighbourCount = 10
const termCount = 4

export const tenNeighbourModel: Baseline = {
  name: 'ten-neighbour model',
  source: 'Serrano-Notivoli et al. 2017',
  score({ gauges, table }) {
    const n = table.gaugeCount
    const { order } = nearestGauges(gauges)
    const scores = new Float64Array(table.amountMm.length).fill(Number.NaN)
    const terms = new Float64Array(neighbourCount * termCount)
    const wet = new Float64Array(neighbourCount)
    const share = new Float64Array(neighbourCount)
    const amounts = new Float64Array(neighbourCount)
    const coefficients = new Float64Array(termCount)
    for (let row = 0; row < table.dayCount; row++) {
      for (let gauge = 0; gauge < n; gauge++) {
        const cell = row * n + gauge
        const amountMm = table.amountMm[cell]!
        if (Number.isNaN(amountMm)) continue
        let found = 0
        let wetCount = 0
        for (let r = 0; r < n - 1 && found < neighbourCount; r++) {
          const other = order[gauge * (n - 1) + r]!
          const otherMm = table.amountMm[row * n + other]!
          if (Number.isNaN(otherMm)) continue
          amounts[found] = otherMm
          wet[found] = otherMm > 0 ? 1 : 0
          wetCount += wet[found]!
          terms[found * termCount] = 1
          terms[found * termCount + 1] = (gauges.xM[other]! - gauges.xM[gauge]!) / 20_000
          terms[found * termCount + 2] = (gauges.yM[other]! - gauges.yM[gauge]!) / 20_000
          const climbM = gauges.elevationM[other]! - gauges.elevationM[gauge]!
          terms[found * termCount + 3] = Number.isNaN(climbM) ? 0 : climbM / 500
          found++
        }
        if (found < neighbourCount) continue
        let wetChance = 0
        let estimateMm = 0
        if (wetCount > 0) {
          wetChance = wetCount === neighbourCount ? 1 : atTarget(fitBinomial(terms, wet, coefficients))
          const top = 2 * Math.max(...amounts) - Math.min(...amounts)
          for (let i = 0; i < neighbourCount; i++) share[i] = amounts[i]! / top
          estimateMm = top * atTarget(fitBinomial(terms, share, coefficients))
        }
        let broken = 0
        if (amountMm > 0 && wetCount === 0) broken++
        if (amountMm === 0 && wetCount === neighbourCount) broken++
        if (amountMm === 0 && wetChance > 0.99 && estimateMm > 5) broken++
        if (amountMm > 5 && wetChance < 0.01 && estimateMm < 0.1) broken++
        scores[cell] = Math.abs(Math.log10((amountMm + 0.1) / (estimateMm + 0.1))) + broken
      }
    }
    return scores
  },
}

/** The model at the gauge itself, where all terms but the constant are 0. */
function atTarget(coefficients: Float64Array): number {
  return 1 / (1 + Math.exp(-coefficients[0]!))
}
