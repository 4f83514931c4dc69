import { describe, expect, it } from 'vitest'
import { type GaugeEntry, gaugeBeside, shownGauges } from './gaugesView.ts'

const habit = { kind: 'fives' } as GaugeEntry['habits'][number]
const entry = (code: string, name: string, over: Partial<GaugeEntry> = {}): GaugeEntry => ({
  gaugeId: code.toLowerCase(),
  code,
  name,
  area: null,
  observerName: null,
  elevationM: null,
  readings: 100,
  strength: 0,
  habits: [],
  ...over,
})
const gauges = [
  entry('N1NYK', 'Ardrane Farm', { habits: [habit], observerName: 'Chidi Núñez' }),
  entry('H9E9R', 'Dorvandle School', { habits: [habit], area: 'Harlessing' }),
  entry('R3XMZ', 'Ollumber'),
]
const codes = (shown: readonly GaugeEntry[]) => shown.map(({ code }) => code)

describe('shownGauges', () => {
  it('shows gauges with a habit, or all, in the order in which they came', () => {
    expect(codes(shownGauges(gauges, 'habits', ''))).toEqual(['N1NYK', 'H9E9R'])
    expect(codes(shownGauges(gauges, 'all', ''))).toEqual(['N1NYK', 'H9E9R', 'R3XMZ'])
  })

  it('finds by name, code, area and observer, whatever the case and the accents', () => {
    expect(codes(shownGauges(gauges, 'all', 'ollum'))).toEqual(['R3XMZ'])
    expect(codes(shownGauges(gauges, 'all', 'h9e'))).toEqual(['H9E9R'])
    expect(codes(shownGauges(gauges, 'all', ' HARLESS '))).toEqual(['H9E9R'])
    expect(codes(shownGauges(gauges, 'all', 'nunez'))).toEqual(['N1NYK'])
    expect(shownGauges(gauges, 'habits', 'ollum')).toEqual([])
  })
})

it('gaugeBeside steps through the list and stops at its ends; from nowhere it goes to the first', () => {
  expect(gaugeBeside(gauges, 'N1NYK', 1)?.code).toBe('H9E9R')
  expect(gaugeBeside(gauges, 'H9E9R', -1)?.code).toBe('N1NYK')
  expect(gaugeBeside(gauges, 'N1NYK', -1)).toBeNull()
  expect(gaugeBeside(gauges, 'R3XMZ', 1)).toBeNull()
  expect(gaugeBeside(gauges, null, 1)?.code).toBe('N1NYK')
  expect(gaugeBeside([], null, 1)).toBeNull()
})
