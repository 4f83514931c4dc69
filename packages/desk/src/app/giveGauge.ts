/**
 * A candidate gets a gauge: one that is there and free, or a new one with a fresh code. They become a person who reads it,
 * signs in by mailed links, and gets reminders; somebody who is known by the same mail address keeps their entry.
 */
import type { Candidate, GiveGaugeAsk } from '@gaugewright/contract'
import { gaugeCodeFromSerial } from '@gaugewright/science'
import type { Gauge, NetworkSettings } from '../ports/ledger.ts'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, answered, refused } from './answer.ts'
import { aboutCandidate, findCandidate } from './people/readCandidates.ts'
import { runningDayOf } from './people/todayOf.ts'
import { newEntry, writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function giveGauge(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: GiveGaugeAsk,
  doer: Doer,
): Promise<Answer<Candidate>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  const found = await findCandidate(ports, networkId, ask.candidateId)
  if (!found.ok) return found
  const { offer, gauge: hasAlready } = found.value
  if (hasAlready !== null) {
    return refused('GAUGE_GIVEN_ALREADY', `${offer.name} has ${hasAlready.code}`, 'Take that step back first.')
  }
  const chosen = await gaugeFor(ports, network.value, ask.gauge)
  if (!chosen.ok) return chosen
  const { gauge, isNew } = chosen.value
  const known = offer.mail === null ? null : await ports.access.personByMail(offer.mail)
  const personId = known?.id ?? ports.newId()
  await ports.ledger.saveGauges([{ ...gauge, observerName: offer.name }])
  await ports.access.savePerson(
    known === null
      ? {
          id: personId,
          name: offer.name,
          role: 'observer',
          mail: offer.mail,
          language: offer.language,
          gauges: [gauge.id],
          addedAtUtc: ports.clock.nowUtc(),
        }
      : { ...known, gauges: [...new Set([...known.gauges, gauge.id])] },
  )
  const about = aboutCandidate(ask.candidateId)
  const state = newEntry(
    ports,
    networkId,
    about,
    'state',
    { state: 'gauge in hand', why: gauge.code },
    { by: writer(doer) },
  )
  const given = { gaugeId: gauge.id, personId, isNewPerson: known === null, isNewGauge: isNew }
  await ports.journal.append([
    state,
    newEntry(ports, networkId, about, 'gauge given', given, { by: writer(doer), id: `${state.id} gauge` }),
  ])
  await writeTrail(ports, doer, { act: 'giveGauge', subject: ask.candidateId })
  return await findCandidate(ports, networkId, ask.candidateId)
}

async function gaugeFor(
  ports: Pick<Ports, 'ledger' | 'access' | 'clock' | 'newId'>,
  network: NetworkSettings,
  asked: GiveGaugeAsk['gauge'],
): Promise<Answer<{ gauge: Gauge; isNew: boolean }>> {
  if ('code' in asked) {
    const gauge = await ports.ledger.gauge(network.id, asked.code.toUpperCase())
    if (gauge === null) {
      return refused('GAUGE_NOT_IN_NETWORK', `the gauge "${asked.code}"`, 'Give the code of a gauge of the network.')
    }
    const holder = (await ports.access.people()).find(({ gauges }) => gauges.includes(gauge.id))
    if (holder !== undefined || gauge.closedOn !== null) {
      const seen = holder === undefined ? `${gauge.code} is closed` : `${gauge.code} is read by ${holder.name}`
      return refused('GAUGE_NOT_FREE', seen, 'Choose a gauge that nobody reads, or make a new one.')
    }
    return answered({ gauge, isNew: false })
  }
  const codes = new Set((await ports.ledger.gauges(network.id)).map(({ code }) => code))
  let serial = codes.size
  while (codes.has(gaugeCodeFromSerial(serial))) serial++
  return answered({
    isNew: true,
    gauge: {
      id: ports.newId(),
      networkId: network.id,
      code: gaugeCodeFromSerial(serial),
      name: asked.name,
      latDeg: asked.latDeg,
      lonDeg: asked.lonDeg,
      elevationM: asked.elevationM,
      area: null,
      observerName: null,
      resolutionUm: network.unit === 'in' ? 254 : 200,
      openedOn: runningDayOf(network, ports),
      closedOn: null,
    },
  })
}
