import type { UrgentItem, WireStorm } from '@gaugewright/contract'
import { expect, it } from 'vitest'
import { urgentMapOf } from './urgentMapView.ts'

const item = (id: string, latDeg: number, lonDeg: number) => ({ report: { id }, latDeg, lonDeg }) as UrgentItem
const storm: WireStorm = {
  id: 's',
  reportIds: ['a', 'b'],
  firstSeenAtUtc: '2026-05-31T08:00:00Z',
  lastSeenAtUtc: '2026-05-31T08:30:00Z',
  largestStoneMm: null,
  from: { latDeg: 45, lonDeg: 10 },
  to: { latDeg: 45, lonDeg: 10.3 },
  track: { speedKmPerH: 47, speedRangeKmPerH: { low: 40, high: 56 }, towardDeg: 90, towardPlusMinusDeg: 20 },
}
const outline = {
  type: 'MultiPolygon',
  coordinates: [
    [
      [
        [9.5, 44.5],
        [10.5, 44.5],
        [10.5, 45.5],
        [9.5, 44.5],
      ],
    ],
  ],
}
const layers = [
  { name: 'Basin', kind: 'outline' as const, geojson: { features: [{ properties: {}, geometry: outline }] } },
  {
    name: 'Towns',
    kind: 'place' as const,
    geojson: {
      features: [
        { properties: { name: 'Large', rank: 1 }, geometry: { type: 'Point', coordinates: [10, 45] } },
        { properties: { name: 'Small', rank: 3 }, geometry: { type: 'Point', coordinates: [10.1, 45] } },
      ],
    },
  },
]

it('north is up, east is right, and everything lies within the box', () => {
  const map = urgentMapOf([item('a', 45.2, 10), item('b', 44.8, 10.2)], [storm], layers)
  const [under, top] = map.reports
  expect(top?.item.report.id).toBe('a')
  expect(top!.y).toBeLessThan(under!.y)
  expect(under!.x).toBeGreaterThan(top!.x)
  // 0.4° of latitude are 44.5 km.
  expect(under!.y - top!.y).toBeCloseTo(44.5, 0)
  for (const { x, y } of map.reports) {
    expect(x > map.box.x && x < map.box.x + map.box.width).toBe(true)
    expect(y > map.box.y && y < map.box.y + map.box.height).toBe(true)
  }
  expect(map.towns.map(({ name }) => name)).toEqual(['Large'])
  expect(map.base[0]?.path.startsWith('M')).toBe(true)
})

it('a storm without a track has a mark but no direction', () => {
  const [with_] = urgentMapOf([item('a', 45, 10)], [storm], []).storms
  expect(with_?.cone).toMatch(/^M.*A28 28 /)
  expect(with_?.head?.towardDeg).toBe(90)
  const [without] = urgentMapOf([item('a', 45, 10)], [{ ...storm, track: null }], []).storms
  expect([without?.cone, without?.head]).toEqual([null, null])
})

it('with nothing to show there is still a box', () => {
  expect(urgentMapOf([], [], []).box.width).toBeGreaterThan(0)
})
