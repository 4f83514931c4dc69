/**
 * A synthetic photo: points in space are drawn by a camera whose place, turn and lens are known, written apart from the code
 * under test (rotation matrices), and the angles read off the picture are held to the truth.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PhotoPoint, photoAngles } from '../../src/siting/photoAngles.ts'
import { seededRandom } from '../../src/stats/seededRandom.ts'

const RAD = Math.PI / 180
const size = { widthPx: 4000, heightPx: 3000 }

interface Camera {
  heightM: number
  pitchDeg: number
  rollDeg: number
  equivalentMm: number
}

/** Where a point (east, north, up; the camera looks north) falls on the picture; y downwards. */
function draw(
  { heightM, pitchDeg, rollDeg, equivalentMm }: Camera,
  east: number,
  north: number,
  up: number,
): PhotoPoint {
  const f = (equivalentMm * Math.hypot(size.widthPx, size.heightPx)) / Math.hypot(36, 24)
  const z = up - heightM
  const forward = north * Math.cos(pitchDeg * RAD) + z * Math.sin(pitchDeg * RAD)
  const high = -north * Math.sin(pitchDeg * RAD) + z * Math.cos(pitchDeg * RAD)
  const x = (east * f) / forward
  const y = (high * f) / forward
  const [cos, sin] = [Math.cos(rollDeg * RAD), Math.sin(rollDeg * RAD)]
  return { xPx: size.widthPx / 2 + x * cos - y * sin, yPx: size.heightPx / 2 - (x * sin + y * cos) }
}

const camera = fc.record({
  heightM: fc.double({ min: 0.4, max: 1.7, noNaN: true }),
  pitchDeg: fc.double({ min: -10, max: 15, noNaN: true }),
  rollDeg: fc.double({ min: -12, max: 12, noNaN: true }),
  equivalentMm: fc.constantFrom(24, 26, 28, 35),
})
const tree = fc.record({
  east: fc.double({ min: -3, max: 3, noNaN: true }),
  north: fc.double({ min: 6, max: 30, noNaN: true }),
  up: fc.double({ min: 2, max: 9, noNaN: true }),
})
const FAR = 1e7

describe('angles from a photo', () => {
  it('are those of the scene, for a turned camera with two points of the horizon', () => {
    fc.assert(
      fc.property(camera, tree, (lens, { east, north, up }) => {
        const got = photoAngles({
          ...size,
          focal: { from: 'equivalent', mm: lens.equivalentMm },
          top: draw(lens, east, north, up),
          foot: draw(lens, east, north, 0),
          horizon: [draw(lens, -FAR / 3, FAR, lens.heightM), draw(lens, FAR / 4, FAR, lens.heightM)],
          cameraM: lens.heightM,
        })
        const distanceM = Math.hypot(east, north)
        expect(got.elevationDeg).toBeCloseTo(Math.atan((up - lens.heightM) / distanceM) / RAD, 5)
        expect(got.distanceM).toBeCloseTo(distanceM, 5)
        expect(got.topM).toBeCloseTo(up, 5)
        expect(got.sidewaysDeg).toBeCloseTo(Math.atan2(east, north) / RAD, 5)
      }),
      { numRuns: 200, seed: 11 },
    )
  })

  it('one point of the horizon is enough for a camera held upright', () => {
    const lens = { heightM: 0.6, pitchDeg: 9, rollDeg: 0, equivalentMm: 26 }
    const got = photoAngles({
      ...size,
      focal: { from: 'equivalent', mm: 26 },
      top: draw(lens, 1.2, 14, 7.5),
      foot: draw(lens, 1.2, 14, 0),
      horizon: [draw(lens, FAR / 5, FAR, 0.6)],
      cameraM: 0.6,
    })
    expect(got.elevationDeg).toBeCloseTo(Math.atan(6.9 / Math.hypot(1.2, 14)) / RAD, 5)
    expect(got.topM).toBeCloseTo(7.5, 5)
  })

  it('a staff of known length across the line of sight stands in for the focal length', () => {
    const lens = { heightM: 1.5, pitchDeg: 0, rollDeg: 0, equivalentMm: 31 }
    const got = photoAngles({
      ...size,
      focal: { from: 'length', a: draw(lens, -0.4, 3, 1), b: draw(lens, -0.4, 3, 2), lengthM: 1, distanceM: 3 },
      top: draw(lens, 0.5, 9, 5),
      foot: draw(lens, 0.5, 9, 0),
      horizon: [draw(lens, 0, FAR, 1.5)],
      cameraM: 1.5,
    })
    expect(got.elevationDeg).toBeCloseTo(Math.atan(3.5 / Math.hypot(0.5, 9)) / RAD, 5)
  })

  it('its standard errors are those of a thousand clumsy hands', () => {
    const lens = { heightM: 1.4, pitchDeg: 4, rollDeg: 3, equivalentMm: 26 }
    const random = seededRandom(21)
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
    const clickPx = 8
    const nudge = ({ xPx, yPx }: PhotoPoint) => ({ xPx: xPx + clickPx * normal(), yPx: yPx + clickPx * normal() })
    const scene = {
      top: draw(lens, 1, 11, 6),
      foot: draw(lens, 1, 11, 0),
      horizon: [draw(lens, -FAR / 3, FAR, 1.4), draw(lens, FAR / 3, FAR, 1.4)],
    }
    const told = photoAngles({ ...size, ...scene, focal: { from: 'equivalent', mm: 26 }, cameraM: 1.4, clickPx })
    const drawn = Array.from({ length: 4000 }, () =>
      photoAngles({
        ...size,
        top: nudge(scene.top),
        foot: nudge(scene.foot),
        horizon: scene.horizon.map(nudge),
        focal: { from: 'equivalent', mm: 26 * (1 + 0.02 * normal()) },
        cameraM: 1.4 + 0.03 * normal(),
        clickPx,
      }),
    )
    const sd = (of: (one: (typeof drawn)[number]) => number) => {
      const mean = drawn.reduce((sum, one) => sum + of(one), 0) / drawn.length
      return Math.sqrt(drawn.reduce((sum, one) => sum + (of(one) - mean) ** 2, 0) / (drawn.length - 1))
    }
    expect(told.elevationSdDeg / sd(({ elevationDeg }) => elevationDeg)).toBeGreaterThan(0.93)
    expect(told.elevationSdDeg / sd(({ elevationDeg }) => elevationDeg)).toBeLessThan(1.07)
    expect(told.distanceSdM! / sd(({ distanceM }) => distanceM!)).toBeGreaterThan(0.9)
    expect(told.distanceSdM! / sd(({ distanceM }) => distanceM!)).toBeLessThan(1.1)
    expect(told.topSdM! / sd(({ topM }) => topM!)).toBeGreaterThan(0.9)
    expect(told.topSdM! / sd(({ topM }) => topM!)).toBeLessThan(1.1)
  })

  it('tells a weak distance: a far tree from a low rim', () => {
    const lens = { heightM: 0.5, pitchDeg: 3, rollDeg: 0, equivalentMm: 26 }
    const got = photoAngles({
      ...size,
      focal: { from: 'equivalent', mm: 26 },
      top: draw(lens, 0, 28, 9),
      foot: draw(lens, 0, 28, 0),
      horizon: [draw(lens, 0, FAR, 0.5)],
      cameraM: 0.5,
      clickPx: 10,
    })
    expect(got.isDistanceWeak).toBe(true)
    expect(got.elevationSdDeg).toBeLessThan(1)
  })

  it('without a foot there is an angle and no distance', () => {
    const lens = { heightM: 0.6, pitchDeg: 0, rollDeg: 0, equivalentMm: 26 }
    const got = photoAngles({
      ...size,
      focal: { from: 'equivalent', mm: 26 },
      top: draw(lens, 0, 10, 5),
      foot: null,
      horizon: [],
      cameraM: 0.6,
    })
    expect(got).toMatchObject({ distanceM: null, topM: null, isDistanceWeak: true })
    expect(got.elevationDeg).toBeCloseTo(Math.atan(4.4 / 10) / RAD, 6)
    expect(got.elevationSdDeg).toBeGreaterThan(1.5)
  })
})
