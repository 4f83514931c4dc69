/**
 * Angles, distance and height of an obstacle from a photo taken at the height of the rim. A pinhole camera: the focal
 * length in pixels follows from the 35 mm equivalent of the photo's own data, or from a length in the picture that is
 * known and lies across the line of sight. The horizon tells how the camera was held. Errors by first-order propagation
 * of what was clicked and of the focal length (central differences); test/laws/photoAngles.laws.test.ts holds them to a
 * simulation. Lens distortion is not in it: keep the obstacle near the middle.
 */
import { ScienceError } from '../error.ts'

/** In pixels from the upper left corner of the picture, y downwards. */
export interface PhotoPoint {
  xPx: number
  yPx: number
}

export type Focal =
  /** As the photo says it: the focal length with the same diagonal angle of view on a 36 mm × 24 mm frame [CIPA2004]. */
  | { from: 'equivalent'; mm: number }
  /** Something of known length, held upright or level across the line of sight, at a known distance from the camera. */
  | { from: 'length'; a: PhotoPoint; b: PhotoPoint; lengthM: number; distanceM: number }

export interface PhotoAsk {
  widthPx: number
  heightPx: number
  focal: Focal
  top: PhotoPoint
  /** Where the obstacle meets the ground; null where that is hidden. */
  foot: PhotoPoint | null
  /** One point of the horizon where the camera was held upright, two where it was turned; none: held level, more or less. */
  horizon: readonly PhotoPoint[]
  /** Height of the camera above the ground at the obstacle's foot. */
  cameraM: number
  /** Standard error of a click. Default 0.2 % of the picture's width. */
  clickPx?: number
}

export interface PhotoAngles {
  elevationDeg: number
  elevationSdDeg: number
  /** To the right of the picture's middle. */
  sidewaysDeg: number
  /** From the depression of the foot; null where it was not clicked or does not lie below the horizon. */
  distanceM: number | null
  distanceSdM: number | null
  /** Of the top above the ground at the foot; null with the distance. */
  topM: number | null
  topSdM: number | null
  /** The distance is worse than a quarter of itself: measure it with a tape. */
  isDistanceWeak: boolean
}

const FRAME_DIAGONAL_MM = Math.hypot(36, 24)
/** The equivalent is a whole number in the photo's data, and makers round freely: 2 % (common practice). */
const FOCAL_SHARE_SD = 0.02
/** Without a horizon: how level a hand holds a camera. Common practice. */
const LEVEL_SD_DEG = 2
const LENGTH_SHARE_SD = 0.02
const CAMERA_SD_M = 0.03
const DEG = 180 / Math.PI

/** @throws {ScienceError} OUT_OF_DOMAIN where a size, a focal length or a length is not above 0, or both horizon points are one */
export function photoAngles(ask: PhotoAsk): PhotoAngles {
  const clickPx = ask.clickPx ?? 0.002 * ask.widthPx
  const inputs = inputsOf(ask, clickPx)
  const value = measured(
    ask,
    inputs.map(({ value: one }) => one),
  )
  const variance = { elevationDeg: 0, distanceM: 0, topM: 0 }
  for (const [index, { sd }] of inputs.entries()) {
    const moved = (sign: number) =>
      measured(
        ask,
        inputs.map((one, at) => one.value + (at === index ? sign * 0.5 * sd : 0)),
      )
    const [low, high] = [moved(-1), moved(1)]
    for (const key of ['elevationDeg', 'distanceM', 'topM'] as const) variance[key] += (high[key] - low[key]) ** 2
  }
  const hasDistance = ask.foot !== null && Number.isFinite(value.distanceM) && value.distanceM > 0
  const distanceSdM = Math.sqrt(variance.distanceM)
  const kept = (one: number) => (hasDistance && Number.isFinite(one) ? one : null)
  return {
    elevationDeg: value.elevationDeg,
    elevationSdDeg: Math.sqrt(variance.elevationDeg),
    sidewaysDeg: value.sidewaysDeg,
    distanceM: kept(value.distanceM),
    distanceSdM: kept(distanceSdM),
    topM: kept(value.topM),
    topSdM: kept(Math.sqrt(variance.topM)),
    isDistanceWeak: !hasDistance || !(distanceSdM < 0.25 * value.distanceM),
  }
}

/** Focal length in pixels. Turning the phone upright does not change it. */
export function focalPx(focal: Focal, widthPx: number, heightPx: number): number {
  const px =
    focal.from === 'equivalent'
      ? (focal.mm * Math.hypot(widthPx, heightPx)) / FRAME_DIAGONAL_MM
      : (Math.hypot(focal.a.xPx - focal.b.xPx, focal.a.yPx - focal.b.yPx) * focal.distanceM) / focal.lengthM
  if (!(px > 0 && Number.isFinite(px))) {
    throw new ScienceError('OUT_OF_DOMAIN', `A focal length of ${px} px cannot be: look at the lengths given.`)
  }
  return px
}

/** Everything that is not known exactly: top, foot, horizon (or how level), focal length, camera's height. */
function inputsOf(ask: PhotoAsk, clickPx: number): { value: number; sd: number }[] {
  const click = ({ xPx, yPx }: PhotoPoint) => [
    { value: xPx, sd: clickPx },
    { value: yPx, sd: clickPx },
  ]
  const px = focalPx(ask.focal, ask.widthPx, ask.heightPx)
  const lengthPx =
    ask.focal.from === 'length' ? Math.hypot(ask.focal.a.xPx - ask.focal.b.xPx, ask.focal.a.yPx - ask.focal.b.yPx) : 1
  const focalShare =
    ask.focal.from === 'equivalent' ? FOCAL_SHARE_SD : Math.hypot((Math.SQRT2 * clickPx) / lengthPx, LENGTH_SHARE_SD)
  return [
    { value: px, sd: px * focalShare },
    { value: ask.cameraM, sd: CAMERA_SD_M },
    { value: 0, sd: ask.horizon.length === 0 ? LEVEL_SD_DEG / DEG : 0 },
    ...click(ask.top),
    ...click(ask.foot ?? ask.top),
    ...ask.horizon.slice(0, 2).flatMap(click),
  ]
}

interface Measured {
  elevationDeg: number
  sidewaysDeg: number
  distanceM: number
  topM: number
}

/** The geometry itself: rays (right, up, forward), the plane of the horizon, angles against it. */
function measured(ask: PhotoAsk, [px, cameraM, tilt, topX, topY, footX, footY, ...horizon]: number[]): Measured {
  const ray = (x: number, y: number): Vector => [x - ask.widthPx / 2, ask.heightPx / 2 - y, px!]
  const up = upOf(horizon, ray, tilt!)
  const top = ray(topX!, topY!)
  const forward = flatten([0, 0, 1], up)
  const right = cross(up, forward)
  const elevation = Math.asin(dot(top, up) / length(top))
  const foot = ray(footX!, footY!)
  const depression = -Math.asin(dot(foot, up) / length(foot))
  const distanceM = cameraM! / Math.tan(depression)
  return {
    elevationDeg: elevation * DEG,
    sidewaysDeg: Math.atan2(dot(top, right), dot(top, forward)) * DEG,
    distanceM,
    topM: cameraM! + distanceM * Math.tan(elevation),
  }
}

type Vector = [number, number, number]

/** Straight up, in the camera's frame: across the plane through the eye and the horizon. */
function upOf(horizon: number[], ray: (x: number, y: number) => Vector, tilt: number): Vector {
  if (horizon.length === 0) return [0, Math.cos(tilt), Math.sin(tilt)]
  const first = ray(horizon[0]!, horizon[1]!)
  if (horizon.length === 2) {
    // Held upright: up lies in the plane of the picture's middle line, at a right angle to the ray to the horizon.
    const pitch = Math.atan2(-first[1], first[2])
    return [0, Math.cos(pitch), Math.sin(pitch)]
  }
  const second = ray(horizon[2]!, horizon[3]!)
  const across = cross(first, second)
  const size = length(across)
  if (size < 1e-9) throw new ScienceError('OUT_OF_DOMAIN', 'The two points of the horizon are one: click two apart.')
  const sign = across[1] < 0 ? -1 : 1
  return [(sign * across[0]) / size, (sign * across[1]) / size, (sign * across[2]) / size]
}

function flatten(vector: Vector, up: Vector): Vector {
  const rise = dot(vector, up)
  const flat: Vector = [vector[0] - rise * up[0], vector[1] - rise * up[1], vector[2] - rise * up[2]]
  const size = length(flat)
  return [flat[0] / size, flat[1] / size, flat[2] / size]
}
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const length = (a: Vector) => Math.hypot(...a)
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
