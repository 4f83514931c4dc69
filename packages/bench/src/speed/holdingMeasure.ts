/** Going quiet on simulated observers, beside a fixed fortnight; and how long a gauge's part in a map takes to work out. */
import { fitField, goingQuiet, placeGauges, seededRandom, sharpening } from '@gaugewright/science'
import type { SpeedLine } from './speedLine.ts'
import { median } from './timings.ts'

const LISTED_FROM = 0.8
const FORTNIGHT = 14
const PEOPLE = 200
const habits = [
  { name: 'every morning (98 %)', after: [0.6, 0.985] },
  { name: 'most mornings (82 %)', after: [0.45, 0.9] },
  { name: 'about half', after: [0.35, 0.65] },
] as const

export async function holdingMeasure(): Promise<SpeedLine[]> {
  return [...habits.flatMap(({ name, after }) => quietLines(name, after)), sharpeningLine()]
}

function quietLines(name: string, after: readonly [number, number]): SpeedLine[] {
  const random = seededRandom(1700)
  const habit = (days: number): number[] => {
    const all: number[] = []
    for (let day = 0; day < days; day++) all.push(random() < after[all.at(-1) ?? 1]! ? 1 : 0)
    return all
  }
  const delays: number[] = []
  let episodes = 0
  let fortnights = 0
  let years = 0
  for (let person = 0; person < PEOPLE; person++) {
    const days = habit(565)
    let wasListed = false
    for (let day = 200; day < days.length; day++) {
      const isListed = goingQuiet(days.slice(0, day)).probability > LISTED_FROM
      if (isListed && !wasListed) episodes++
      wasListed = isListed
      if (days.slice(day - FORTNIGHT, day).every((one) => one === 0) && days[day] === 0) fortnights++
    }
    years++
    let silent = 0
    while (silent < 60 && goingQuiet([...days, ...Array<number>(silent).fill(0)]).probability <= LISTED_FROM) silent++
    delays.push(silent)
  }
  return [
    {
      what: `going quiet, ${name}`,
      figure: `noticed after ${median(delays)} silent mornings (median; a fixed fortnight: ${FORTNIGHT}); listed without cause ${(episodes / years).toFixed(2)} times a year (fortnight: ${(fortnights / years).toFixed(2)})`,
      aim: '',
    },
  ]
}

function sharpeningLine(): SpeedLine {
  const random = seededRandom(500)
  const rows = Array.from({ length: 500 }, (_, k) => ({
    id: `g${k}`,
    latDeg: 45 + random(),
    lonDeg: 10 + random(),
    elevationM: null,
  }))
  const gauges = placeGauges(rows)
  const amountMm = Float64Array.from(rows, ({ latDeg, lonDeg }) =>
    Math.max(0, 20 * Math.sin(6 * latDeg) + 15 * Math.cos(7 * lonDeg) + 8 * random()),
  )
  const params = fitField(gauges, { amountMm })
  const times = Array.from({ length: 40 }, (_, g) => {
    const from = performance.now()
    sharpening(params, gauges, { amountMm }, g, 5000)
    return performance.now() - from
  })
  return {
    what: 'how much one of 500 gauges sharpened a day’s map',
    figure: `${median(times).toFixed(1)} ms (median of 40)`,
    aim: '',
  }
}
