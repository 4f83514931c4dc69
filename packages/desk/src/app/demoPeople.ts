/** People and sites of the demo: offers at every state with what was said, and surveys of different ages. */
import type { JournalBody, JournalKind } from '@gaugewright/contract'
import { inventMail, inventOffers, inventYard, Random } from '@gaugewright/scenario'
import type { NewJournalEntry } from '../ports/journal.ts'
import type { Gauge } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'

const DAY_MS = 86_400_000
/** Every so many gauges have a survey, so that some sites wait for their first. */
const SURVEYED_EVERY = 2
const OLDEST_SURVEY_DAYS = 1500

export async function demoPeople(
  ports: Pick<Ports, 'access' | 'journal' | 'clock' | 'newId'>,
  networkId: string,
  gauges: readonly Gauge[],
  seed: number,
): Promise<void> {
  // People wait by the clock on the wall, whatever morning the demo's readings end on.
  const nowMs = Date.parse(ports.clock.nowUtc())
  const entries: NewJournalEntry[] = []
  const write = <K extends JournalKind>(
    about: string,
    kind: K,
    daysAgo: number,
    body: JournalBody<K>,
    id = ports.newId(),
  ) => {
    const atUtc = new Date(nowMs - daysAgo * DAY_MS).toISOString()
    entries.push({ id, networkId, about, kind, atUtc, by: '', body })
  }
  const open = gauges.filter(({ closedOn }) => closedOn === null)
  const random = new Random(seed, 'sites')
  for (const [index, gauge] of open.entries()) {
    const [openness, age, hasSurvey] = [random.next(), random.next(), index % SURVEYED_EVERY === 0]
    const plan = inventYard(random, Math.max(0.1, openness))
    if (!hasSurvey) continue
    const daysAgo = Math.round(20 + OLDEST_SURVEY_DAYS * age)
    const surveyedOn = new Date(nowMs - daysAgo * DAY_MS).toISOString().slice(0, 10)
    write(`gauge ${gauge.id}`, 'survey', daysAgo, { surveyedOn, note: '', plan, photos: [] })
  }
  const dayAgo = (days: number) => new Date(nowMs - days * DAY_MS).toISOString().slice(0, 10)
  await demoOffers(ports, write, open, random, dayAgo)
  entries.sort((a, b) => (a.atUtc < b.atUtc ? -1 : 1))
  await ports.journal.append(entries)
}

type Write = <K extends JournalKind>(about: string, kind: K, daysAgo: number, body: JournalBody<K>, id?: string) => void

/** Two of them read gauges of the basin; the others are nobody there yet. */
async function demoOffers(
  ports: Pick<Ports, 'access' | 'newId'>,
  write: Write,
  open: readonly Gauge[],
  random: Random,
  dayAgo: (days: number) => string,
): Promise<void> {
  const names = open.map(({ observerName }) => observerName ?? '').filter((name) => name !== '')
  // Family and given names of neighbours, put together anew.
  const fresh = Array.from({ length: 8 }, (_, k) => {
    const given = names[(7 * k + 3) % names.length]!.split(' ')[0]!
    const family = names[(11 * k + 5) % names.length]!.split(' ').slice(1).join(' ')
    return `${given} ${family}`.trim()
  })
  const newest = [...open].sort((a, b) => ((a.openedOn ?? '') < (b.openedOn ?? '') ? 1 : -1))
  const offers = inventOffers(fresh, (place) => open.indexOf(newest[-place - 1]!))
  for (const offer of offers) {
    const { daysAgo, states, contacts, gauge: place, yardOpenness, ...words } = offer
    const gauge = place === null ? undefined : open[place]
    const name = gauge?.observerName ?? words.name
    const mail = words.mail === null ? null : inventMail(name)
    const id = ports.newId()
    const about = `candidate ${id}`
    write(
      about,
      'offer',
      daysAgo,
      { offer: { ...words, name, mail, latDeg: null, lonDeg: null }, door: 'public page' },
      `offer ${id}`,
    )
    for (const { state, daysAgo: ago, why } of states) {
      const stepId = ports.newId()
      write(about, 'state', ago, { state, why: state === 'gauge in hand' ? (gauge?.code ?? '') : why }, stepId)
      if (state !== 'gauge in hand' || gauge === undefined) continue
      const personId = ports.newId()
      await ports.access.savePerson({
        id: personId,
        name,
        role: 'observer',
        mail,
        language: words.language,
        gauges: [gauge.id],
        addedAtUtc: `${dayAgo(ago)}T08:00:00.000Z`,
      })
      const given = { gaugeId: gauge.id, personId, isNewPerson: true, isNewGauge: false }
      write(about, 'gauge given', ago, given, `${stepId} gauge`)
    }
    for (const contact of contacts) {
      write(about, 'contact', contact.daysAgo, { way: contact.way, text: contact.text, outgoingId: null })
    }
    if (yardOpenness === null) continue
    const surveyedAgo = Math.max(0.5, daysAgo - 2)
    const plan = inventYard(random, yardOpenness)
    const surveyedOn = dayAgo(surveyedAgo)
    write(about, 'survey', surveyedAgo, { surveyedOn, note: '', plan, photos: [] })
  }
}
