import { expect, it } from 'vitest'
import { rainyNetwork } from '../../test/support/rainyNetwork.ts'
import { usualCorrelation } from './learnCorrelation.ts'
import { buildNeighbourhood } from './neighbourhood.ts'
import { neighbourhoodOf } from './neighbourhoodOf.ts'

const { gauges } = rainyNetwork(3, 12, 1)
const correlation = usualCorrelation(12)

it('neighbourhoodOf works a neighbourhood out once, and gives what buildNeighbourhood gives', () => {
  const once = neighbourhoodOf(gauges, correlation, 6)
  expect(neighbourhoodOf(gauges, correlation, 6)).toBe(once)
  expect(once).toEqual(buildNeighbourhood(gauges, correlation, 6))
})

it('neighbourhoodOf never gives the neighbourhood of other gauges, another size or another correlation', () => {
  neighbourhoodOf(gauges, correlation, 6)
  expect(neighbourhoodOf(gauges, correlation, 7).size).toBe(7)
  const others = rainyNetwork(4, 12, 1).gauges
  expect(neighbourhoodOf(others, correlation, 7)).toEqual(buildNeighbourhood(others, correlation, 7))
  const nearer = { ...correlation, shortRangeM: correlation.shortRangeM / 3 }
  expect(neighbourhoodOf(others, nearer, 7)).toEqual(buildNeighbourhood(others, nearer, 7))
})
