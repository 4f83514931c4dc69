/** Who is going quiet before they are lost, and whom to thank now. */
import type { Holding } from '@gaugewright/contract'
import { countedOccasions, goingQuiet, isoFromEpochDay, type Occasion } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered } from './answer.ts'
import { dryMonth } from './holding/dryMonth.ts'
import { occasionText, quietText } from './holding/occasionWords.ts'
import { pastOf, statesOf, stripOf } from './holding/pastOf.ts'
import { stormOccasions } from './holding/stormOccasions.ts'
import { standing } from './people/journalBody.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

const LOOK_BACK_DAYS = 420
const LISTED_FROM = 0.8
const STRIP_DAYS = 60
const ANSWERED_SHOWN = 12

export async function holding(
  ports: Pick<Ports, 'ledger' | 'access' | 'absences' | 'journal' | 'clock'>,
): Promise<Answer<Holding>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id: networkId, language: usual } = network.value
  const past = await pastOf(ports, network.value, LOOK_BACK_DAYS)
  if (past === null) return answered({ day: '', quiet: [], occasions: [], answered: [] })
  const readerOf = new Map(
    (await ports.access.people()).flatMap((person) => person.gauges.map((gauge) => [gauge, person])),
  )
  const done = standing(await ports.journal.ofKinds(networkId, ['occasion answered']), 'occasion answered')
  const doneKeys = new Set(done.map(({ entry, body }) => `${entry.about} ${body.key}`))
  const storms = await stormOccasions(ports, network.value, past)
  const quiet: Holding['quiet'] = []
  const occasions: Holding['occasions'] = []
  for (const [index, gauge] of past.gauges.entries()) {
    const person = readerOf.get(gauge.id)
    if (gauge.closedOn !== null || (person === undefined && gauge.observerName === null)) continue
    const name = person?.name ?? gauge.observerName ?? ''
    const language = person?.language ?? usual
    const who = { gaugeId: gauge.id, code: gauge.code, gaugeName: gauge.name, name, personId: person?.id ?? null }
    const isOpen = (key: string) => !doneKeys.has(`gauge ${gauge.id} ${key}`)
    const states = statesOf(past, index)
    const expected = states.flatMap((state, at) => (state === 'away' || state === 'not expected' ? [] : [at]))
    const found = goingQuiet(expected.map((at) => (states[at] === 'silent' ? 0 : 1)))
    if (found.probability > LISTED_FROM && found.changedAt !== null) {
      const changedOn = isoFromEpochDay(past.firstDay + expected[found.changedAt]!)
      // The likeliest day may move by a day or two as mornings pass: one word a month is enough.
      const key = `quiet ${changedOn.slice(0, 7)}`
      const { probability, before, since } = found
      if (isOpen(key)) {
        quiet.push({
          ...who,
          key,
          probability,
          changedOn,
          before,
          since,
          strip: stripOf(states.slice(-STRIP_DAYS)),
          text: quietText(language, name, gauge.name),
        })
      }
    }
    const dry = dryMonth(past, index)
    for (const occasion of await occasionsOf(ports, networkId, gauge.id, past.lastDay, [storms.get(index), dry])) {
      if (!isOpen(occasion.key)) continue
      const text = occasionText(language, occasion, gauge.name)
      occasions.push({ ...who, key: occasion.key, kind: occasion.kind, day: isoFromEpochDay(occasion.day), text })
    }
  }
  const codeOf = new Map(
    past.gauges.map(({ id, code, observerName }) => [`gauge ${id}`, { code, name: observerName ?? '' }]),
  )
  return answered({
    day: isoFromEpochDay(past.lastDay),
    quiet: quiet.sort((a, b) => b.probability * b.before - a.probability * a.before),
    occasions: occasions.sort((a, b) => (a.day < b.day ? 1 : -1)),
    answered: done
      .slice(-ANSWERED_SHOWN)
      .reverse()
      .map(({ entry, body }) => ({ id: entry.id, ...(codeOf.get(entry.about) ?? { code: '', name: '' }), ...body })),
  })
}

const kept = new WeakMap<Ports['ledger'], Map<string, { lastDay: number; count: number; days: Float64Array }>>()

async function occasionsOf(
  { ledger }: Pick<Ports, 'ledger'>,
  networkId: string,
  gaugeId: string,
  today: number,
  others: readonly (Occasion | undefined)[],
): Promise<Occasion[]> {
  const memory = kept.get(ledger) ?? new Map()
  kept.set(ledger, memory)
  let own = memory.get(gaugeId)
  if (own === undefined || own.lastDay !== today) {
    const readings = await ledger.readingsOfGauge(networkId, gaugeId, '0001-01-01', '9999-12-31')
    const days = Float64Array.from(readings, ({ lastDay }) =>
      Math.round(Date.parse(`${lastDay}T00:00:00Z`) / 86_400_000),
    ).sort()
    own = { lastDay: today, count: days.length, days }
    memory.set(gaugeId, own)
  }
  return [...others.filter((one) => one !== undefined), ...countedOccasions({ readingDays: own.days, today })]
}
