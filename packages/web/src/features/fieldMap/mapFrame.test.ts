import { describe, expect, it } from 'vitest'
import { boundsOf, fitView, keepInSight, makeFrame, nearestPoint, nextPointToward, zoomAbout } from './mapFrame.ts'

const frame = makeFrame({ west: -34, south: 43, east: -32, north: 45 })

describe('makeFrame', () => {
  it('puts the corners at the corners, north up', () => {
    expect(frame.project(-34, 45)).toEqual([0, 0])
    const [x, y] = frame.project(-32, 43)
    expect(x).toBeCloseTo(1000, 6)
    expect(y).toBeCloseTo(frame.worldHeight, 6)
  })
  it('finds the latitude of a height again', () => {
    const [, y] = frame.project(-33, 44.25)
    expect(frame.latOfWorldY(y)).toBeCloseTo(44.25, 9)
  })
})

describe('views', () => {
  const size = { widthPx: 800, heightPx: 600 }
  const fitted = fitView(frame, size)
  it('fitView shows all and centres it', () => {
    expect(fitted.yPx + frame.worldHeight * fitted.scale).toBeLessThanOrEqual(600 - 13)
    expect(fitted.xPx).toBeCloseTo(800 - (fitted.xPx + frame.worldWidth * fitted.scale), 6)
  })
  it('zoomAbout keeps the point under the pointer, and stops at its limits', () => {
    const closer = zoomAbout(fitted, 3, 200, 150, fitted)
    expect((200 - closer.xPx) / closer.scale).toBeCloseTo((200 - fitted.xPx) / fitted.scale, 6)
    expect((150 - closer.yPx) / closer.scale).toBeCloseTo((150 - fitted.yPx) / fitted.scale, 6)
    expect(zoomAbout(fitted, 1e6, 0, 0, fitted).scale).toBeCloseTo(fitted.scale * 40, 9)
    expect(zoomAbout(fitted, 1e-6, 0, 0, fitted).scale).toBeCloseTo(fitted.scale * 0.7, 9)
  })
  it('keepInSight never loses the map', () => {
    const lost = keepInSight({ ...fitted, xPx: 9000, yPx: -9000 }, frame, size)
    expect(lost.xPx).toBeLessThanOrEqual(640)
    expect(lost.yPx + frame.worldHeight * lost.scale).toBeGreaterThanOrEqual(120)
  })
})

describe('points', () => {
  const world = Float64Array.of(10, 10, 50, 12, 30, 70, 400, 11)
  const view = { scale: 2, xPx: 5, yPx: 7 }
  it('nearestPoint takes the nearest in reach, or none', () => {
    expect(nearestPoint(world, view, 104, 30, 10)).toBe(1)
    expect(nearestPoint(world, view, 300, 300, 10)).toBe(-1)
  })
  it('nextPointToward goes to the next one that way, or nowhere', () => {
    expect(nextPointToward(world, 0, 1, 0)).toBe(1)
    expect(nextPointToward(world, 1, 1, 0)).toBe(3)
    expect(nextPointToward(world, 0, 0, 1)).toBe(2)
    expect(nextPointToward(world, 0, -1, 0)).toBe(-1)
  })
})

it('boundsOf holds every point with a margin, and one point too', () => {
  expect(boundsOf([{ lonDeg: 3, latDeg: 4 }])).toEqual({ west: 2.9, south: 3.9, east: 3.1, north: 4.1 })
  const bounds = boundsOf([
    { lonDeg: 0, latDeg: 0 },
    { lonDeg: 10, latDeg: 5 },
  ])
  expect(bounds.west).toBeLessThan(0)
  expect(bounds.east).toBeGreaterThan(10)
})
