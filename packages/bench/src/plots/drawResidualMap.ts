/** Each gauge at its place, by whether it catches more or less than the others let expect. */
import * as Plot from '@observablehq/plot'
import type { GaugeResidual } from '../score/expectationShape.ts'
import { drawPart, type Part } from './drawing.ts'
import { gridInk, ground, ink, quietInk } from './palette.ts'
import {
  enoughDays,
  isBeyondChance,
  residualClasses,
  residualClassOf,
  residualEdges,
  signOf,
} from './residualClasses.ts'

export interface PlacedResidual extends GaugeResidual {
  latDeg: number
  lonDeg: number
}

const width = 640
const margins = { marginLeft: 44, marginRight: 12, marginTop: 22, marginBottom: 40 }
const kmPerDegree = 111.195

export function drawResidualMap(gauges: readonly PlacedResidual[]): Part {
  const lat = extentOf(gauges.map((gauge) => gauge.latDeg))
  const lon = extentOf(gauges.map((gauge) => gauge.lonDeg))
  const shrink = Math.cos((((lat[0] + lat[1]) / 2) * Math.PI) / 180)
  const innerWidth = width - margins.marginLeft - margins.marginRight
  const innerHeight = Math.round((innerWidth * (lat[1] - lat[0])) / ((lon[1] - lon[0]) * shrink))
  const known = gauges.filter((gauge) => gauge.count >= enoughDays)
  const scaleKm = [200, 100, 50, 20, 10].find((km) => km < (lon[1] - lon[0]) * kmPerDegree * shrink * 0.3) ?? 5
  const scaleFrom = lon[0] + 0.03 * (lon[1] - lon[0])
  const scale = {
    from: scaleFrom,
    to: scaleFrom + scaleKm / (kmPerDegree * shrink),
    at: lat[0] + 0.04 * (lat[1] - lat[0]),
  }
  return drawPart({
    width,
    height: innerHeight + margins.marginTop + margins.marginBottom,
    ...margins,
    x: { domain: lon, label: 'longitude (°)', labelAnchor: 'center', labelArrow: 'none', ticks: 6, grid: true },
    y: { domain: lat, label: 'latitude (°)', labelArrow: 'none', ticks: 6, grid: true },
    marks: [
      Plot.frame({ stroke: gridInk }),
      Plot.dot(
        gauges.filter((gauge) => gauge.count < enoughDays),
        { x: 'lonDeg', y: 'latDeg', symbol: 'times', r: 2.5, stroke: quietInk },
      ),
      ...residualClasses.flatMap(({ colour, radius }, place) => {
        const own = known.filter((gauge) => residualClassOf(gauge) === place)
        const rim = { beyond: own.filter(isBeyondChance), within: own.filter((gauge) => !isBeyondChance(gauge)) }
        const look = { x: 'lonDeg', y: 'latDeg', r: radius, fill: colour, stroke: ink }
        return [
          Plot.dot(rim.within, { ...look, strokeWidth: 0.5 }),
          Plot.dot(rim.beyond, { ...look, strokeWidth: 1.8 }),
          drawSigns(own, place),
        ]
      }),
      Plot.link([scale], { x1: 'from', x2: 'to', y1: 'at', y2: 'at', stroke: ink, strokeWidth: 3 }),
      Plot.text([scale], {
        x: 'to',
        y: 'at',
        text: [`${scaleKm} km`],
        dx: 6,
        textAnchor: 'start',
        stroke: ground,
        fill: ink,
      }),
    ],
  })
}

/** The classes of the map, from less to more, as circles with what they stand for. */
export function drawResidualLegend(): Part {
  const labels = residualClasses.map((_, place) => {
    const from = residualEdges[place - 1]
    const to = residualEdges[place]
    if (from === undefined) return `< ${signed(to!)}`
    return to === undefined ? `≥ ${signed(from)}` : `to ${signed(to)}`
  })
  const step = 90
  const items = residualClasses.map((look, place) => ({ ...look, place, x: 10 + place * step, label: labels[place]! }))
  return drawPart({
    width,
    height: 22,
    margin: 0,
    axis: null,
    x: { domain: [0, width], range: [0, width] },
    y: { domain: [0, 1] },
    marks: [
      ...items.map((item) =>
        Plot.dot([item], { x: 'x', y: 0.5, r: item.radius, fill: item.colour, stroke: ink, strokeWidth: 0.7 }),
      ),
      ...items.map((item) => drawSigns([{ lonDeg: item.x, latDeg: 0.5 }], item.place)),
      Plot.text(items, { x: (item) => item.x + 11, y: 0.5, text: 'label', textAnchor: 'start' }),
    ],
  })
}

/** The signs of one class in one path, which keeps a map of many gauges small. */
function drawSigns(gauges: readonly Pick<PlacedResidual, 'lonDeg' | 'latDeg'>[], place: number): Plot.Markish {
  const sign = signOf(place)
  if (sign === null) return null
  const arm = 0.55 * residualClasses[place]!.radius
  return (_index, scales, _values, _dimensions, context) => {
    const path = context.document.createElementNS('http://www.w3.org/2000/svg', 'path')
    const strokes = gauges.map(({ lonDeg, latDeg }) => {
      const x = Number(scales.x!(lonDeg))
      const y = Number(scales.y!(latDeg))
      return `M${x - arm},${y}h${2 * arm}${sign === '+' ? `M${x},${y - arm}v${2 * arm}` : ''}`
    })
    path.setAttribute('d', strokes.join(''))
    path.setAttribute('stroke', signInk(place))
    path.setAttribute('stroke-width', '1.4')
    return path
  }
}

/** White on the dark ends, ink elsewhere. */
function signInk(place: number): string {
  return place === 0 || place === 6 ? ground : ink
}

function signed(value: number): string {
  return value < 0 ? `−${Math.abs(value)}` : `+${value}`
}

/** From least to most with a little room around. */
function extentOf(values: readonly number[]): [number, number] {
  const least = Math.min(...values)
  const most = Math.max(...values)
  const room = 0.04 * (most - least)
  return [least - room, most + room]
}
