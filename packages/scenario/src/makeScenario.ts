/**
 * The invented network of the demo, whole: terrain, map, gauges, observers, years of weather and reports, and this
 * morning. Pure and seeded: the same ask gives the same answer. See docs/decisions/0003-invented-basin.md.
 */
import {
  dateFromEpochDay,
  epochDayFromDate,
  epochDayFromIso,
  gaugeCodeFromSerial,
  isoFromEpochDay,
} from '@gaugewright/science'
import { positionDeg } from './map/geoFrame.ts'
import { type BasinMap, makeBasinMap } from './map/makeBasinMap.ts'
import { networkName } from './names/placeNames.ts'
import { makeObservers, makeService } from './people/makeObservers.ts'
import type { Observer, Service } from './people/observer.ts'
import { type PlacedGauges, placeGauges } from './people/placeGauges.ts'
import { Random } from './random/random.ts'
import { utcText } from './readingAt.ts'
import { collectReadings } from './reports/collectReadings.ts'
import { keepBook } from './reports/keepBook.ts'
import { makeMistakes } from './reports/makeMistakes.ts'
import { placeMorning, STORM_HUNDREDTHS } from './reports/placeMorning.ts'
import { MM_PER_INCH } from './reports/readGauge.ts'
import { emptyReportTable } from './reports/reportTable.ts'
import type { Scenario, ScenarioAbsence, ScenarioAsk, ScenarioGauge, ScenarioNetwork } from './scenario.ts'
import { makeTerrain } from './terrain/makeTerrain.ts'
import { makeWeather, type Weather } from './weather/makeWeather.ts'

const GAUGES = 180
const YEARS = 6
/** The zone's local time is two hours behind UTC, all year. */
const TIME_ZONE = 'Etc/GMT+2'
const UTC_MINUS_LOCAL_MIN = 120
const MORNING_ENDS_MIN = 11 * 60 + 15
/** Serial numbers of codes are spread out, as in a network that has grown. */
const FIRST_SERIAL = 1207
const SERIAL_STEP = 733
/** Codes of five characters; the step shares no factor with it, so none comes twice. */
const SERIALS = 190_080
/** Mistakes are left to the hand-placed ones in the last days. */
const QUIET_DAYS = 4
const MS_PER_DAY = 86_400_000

const network: ScenarioNetwork = {
  name: networkName,
  timeZone: TIME_ZONE,
  readingTime: '07:00',
  acceptWindowMin: 120,
  unit: 'in',
  language: 'en',
  docketBelow: 0.9,
}

/** @throws {ScienceError} OUT_OF_DOMAIN when `today` is not a real ISO day */
export function makeScenario(ask: ScenarioAsk): Scenario {
  const { seed } = ask
  const gaugeCount = ask.gaugeCount ?? GAUGES
  const lastDay = epochDayFromIso(ask.today)
  const firstDay = sameDayEarlier(lastDay, ask.years ?? YEARS)
  const terrain = makeTerrain(new Random(seed, 'terrain'))
  const map = makeBasinMap(terrain, seed)
  const sites = placeGauges(terrain, map, gaugeCount, new Random(seed, 'gauges'))
  const observers = makeObservers(gaugeCount, new Random(seed, 'observers'))
  const serviceRandom = new Random(seed, 'service')
  const services = observers.map(() => makeService(firstDay, lastDay, serviceRandom))
  const isReadThisMorning = (site: number) => isPlain(observers[site]!, services[site]!, lastDay)
  const weather = makeWeather({ terrain, sites, firstDay, lastDay, seed, isReadThisMorning })
  fillStormCore(weather, observers[weather.storm.coreSite]!)
  const table = emptyReportTable(gaugeCount, firstDay, lastDay - firstDay + 1)
  for (let gauge = 0; gauge < gaugeCount; gauge++) {
    const observer = observers[gauge]!
    const book = { gauge, observer, service: services[gauge]!, rain: weather.rain }
    keepBook(table, book, new Random(seed, `book ${gauge}`))
    const untilDay = table.dayCount - QUIET_DAYS
    makeMistakes({ table, gauge, observer, untilDay, random: new Random(seed, `mistakes ${gauge}`) })
  }
  const random = new Random(seed, 'morning')
  const morning = placeMorning({ table, sites, observers, services, storm: weather.storm, random })
  const preparedAtMs = lastDay * MS_PER_DAY + (MORNING_ENDS_MIN + UTC_MINUS_LOCAL_MIN) * 60_000
  const collected = collectReadings({
    table,
    observers,
    utcMinusLocalMin: UTC_MINUS_LOCAL_MIN,
    receivedByMs: preparedAtMs,
    remarks: morning.remarks,
  })
  return {
    network,
    gauges: describeGauges(map, sites, observers, services, ask.makeCode ?? gaugeCodeFromSerial),
    layers: map.layers,
    readings: collected.readings,
    absences: declaredAbsences(services, firstDay),
    truth: {
      ...collected.truth,
      morning: morning.cases.map((entry) => ({ ...entry, reading: collected.readingOfGaugeToday[entry.gauge]! })),
    },
    preparedAtUtc: utcText(preparedAtMs),
  }
}

/** Bring what the storm's core gauge caught to the amount it will report. */
function fillStormCore(weather: Weather, observer: Observer): void {
  const { rain, storm } = weather
  const midnight = (rain.dayCount - 1) * 24
  const caughtMm = rain.between(storm.coreSite, midnight - 24 + observer.readsAtMin / 60, midnight + 7)
  const missingMm = (STORM_HUNDREDTHS / 100) * MM_PER_INCH - caughtMm
  const stormHours = [3, 4]
  const stormMm = rain.between(storm.coreSite, midnight + 3, midnight + 5)
  for (const hour of stormHours) {
    const at = storm.coreSite * rain.hourCount + midnight + hour
    const share = stormMm > 0 ? rain.mm[at]! / stormMm : 0.5
    rain.mm[at] = Math.max(0, rain.mm[at]! + missingMm * share)
  }
}

/** Reads in inches, early enough, long in service and at home: fit for a case on the last morning. */
function isPlain(observer: Observer, service: Service, lastDay: number): boolean {
  const isOpen = service.openedOn < lastDay - 400 && service.closedOn === null
  const isHome = !service.absences.some((absence) => absence.lastDay > lastDay - 10)
  const isThere = !service.dropouts.some((dropout) => dropout.lastDay > lastDay - 10)
  return observer.unit === 'in' && observer.readsAtMin < 480 && observer.roundsTo === 1 && isOpen && isHome && isThere
}

function sameDayEarlier(lastDay: number, years: number): number {
  const { year, month, day } = dateFromEpochDay(lastDay)
  return epochDayFromDate(year - years, month, Math.min(day, month === 2 ? 28 : day))
}

function describeGauges(
  map: BasinMap,
  sites: PlacedGauges,
  observers: readonly Observer[],
  services: readonly Service[],
  makeCode: (serial: number) => string,
): ScenarioGauge[] {
  return observers.map((observer, gauge): ScenarioGauge => {
    const [lonDeg, latDeg] = positionDeg(sites.xM[gauge]!, sites.yM[gauge]!, 5)
    const county = map.countyAt(sites.xM[gauge]!, sites.yM[gauge]!)
    const { openedOn, closedOn } = services[gauge]!
    return {
      code: makeCode((FIRST_SERIAL + SERIAL_STEP * gauge) % SERIALS),
      name: sites.names[gauge]!,
      latDeg,
      lonDeg,
      elevationM: sites.elevationM[gauge]!,
      area: map.countyNames[county]!,
      observerName: observer.name,
      resolutionUm: observer.unit === 'mm' ? 200 : 254,
      openedOn: isoFromEpochDay(openedOn),
      closedOn: closedOn === null ? null : isoFromEpochDay(closedOn),
    }
  })
}

function declaredAbsences(services: readonly Service[], firstDay: number): ScenarioAbsence[] {
  return services.flatMap((service, gauge) =>
    service.absences
      .filter((absence) => absence.isDeclared && absence.firstDay >= firstDay)
      .map((absence) => ({
        gauge,
        firstDay: isoFromEpochDay(absence.firstDay),
        lastDay: isoFromEpochDay(absence.lastDay),
      })),
  )
}
