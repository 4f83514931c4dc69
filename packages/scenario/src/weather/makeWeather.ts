/**
 * Years of weather over the basin: what every gauge caught, hour by hour. The mood of each day follows a Markov chain;
 * each mood brings its fronts, lows, showers and storms; the last days are written by hand (morningWeather.ts).
 */
import { dateFromEpochDay, epochDayFromDate } from '@gaugewright/science'
import { Random } from '../random/random.ts'
import { sampleGrid, smoothGrid } from '../terrain/grid.ts'
import type { Terrain } from '../terrain/makeTerrain.ts'
import { catchRainInPlace, makeCatch, makeTemperatures } from './catchRain.ts'
import { makeDayWeather, type Sky } from './dayWeather.ts'
import { HourlyRain } from './hourlyRain.ts'
import { type MorningStorm, makeMorningWeather, SCRIPTED_DAYS, SCRIPTED_MILDEST_C } from './morningWeather.ts'
import { makeOrography } from './orography.ts'
import type { Sites } from './sites.ts'
import { nextState, type SynopticState, summerShare } from './synoptic.ts'

export interface Weather {
  /** What the gauges caught, losses taken off. */
  rain: HourlyRain
  /** Sea-level temperature (°C) of each day since `rain.originDay`. */
  temperatures: Float64Array
  states: SynopticState[]
  storm: MorningStorm
}

export interface WeatherAsk {
  terrain: Terrain
  sites: Sites
  /** First and last observing day wanted (epoch days). */
  firstDay: number
  lastDay: number
  seed: number
  isReadThisMorning: (site: number) => boolean
}

/** Days made before the first observing day, so that totals that reach back find their rain. */
const RUN_UP_DAYS = 2

export function makeWeather(ask: WeatherAsk): Weather {
  const originDay = ask.firstDay - RUN_UP_DAYS
  const dayCount = ask.lastDay - originDay + 1
  const ground = smoothGrid(ask.terrain.elevation, 12)
  const sky: Sky = {
    rain: new HourlyRain(originDay, dayCount, ask.sites.count),
    sites: ask.sites,
    orography: makeOrography(ask.terrain.elevation, ask.sites),
    groundM: (xKm, yKm) => sampleGrid(ground, xKm * 1000, yKm * 1000),
  }
  const mood = new Random(ask.seed, 'mood')
  const random = new Random(ask.seed, 'weather')
  const states: SynopticState[] = []
  let state: SynopticState = 'settled'
  for (let day = 0; day < dayCount; day++) {
    const summer = summerShare(dayOfYear(originDay + day))
    state = nextState(state, summer, mood)
    const isScripted = day >= dayCount - SCRIPTED_DAYS
    states.push(isScripted ? 'westerly' : state)
    if (!isScripted) makeDayWeather(sky, state, day * 24, summer, random)
  }
  clearFrom(sky.rain, (dayCount - SCRIPTED_DAYS) * 24 + 7)
  const morning = new Random(ask.seed, 'morning weather')
  const storm = makeMorningWeather(sky, (dayCount - 1) * 24, ask.isReadThisMorning, morning)
  const air = new Random(ask.seed, 'air')
  const temperatures = makeTemperatures(dayOfYear(originDay), dayCount, air)
  for (let day = dayCount - SCRIPTED_DAYS; day < dayCount; day++) {
    temperatures[day] = Math.max(temperatures[day]!, SCRIPTED_MILDEST_C)
  }
  catchRainInPlace(sky.rain, ask.sites, temperatures, makeCatch(ask.sites.count, new Random(ask.seed, 'catch')))
  return { rain: sky.rain, temperatures, states, storm }
}

/** Take away what earlier days sent into the hours from `hour` on. */
function clearFrom(rain: HourlyRain, hour: number): void {
  for (let site = 0; site < rain.siteCount; site++) {
    rain.mm.fill(0, site * rain.hourCount + hour, (site + 1) * rain.hourCount)
  }
}

function dayOfYear(epochDay: number): number {
  return epochDay - epochDayFromDate(dateFromEpochDay(epochDay).year, 1, 1) + 1
}
