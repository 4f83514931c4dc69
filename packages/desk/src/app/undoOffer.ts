/**
 * Takes a step of an offer back, or puts it back. With the step "gauge in hand" the gauge is taken from the person again, as
 * long as nothing was read: a person made for it goes, a gauge made for it is closed.
 */
import type { Candidate, UndoOfferAsk } from '@gaugewright/contract'
import type { Ports } from '../ports/ports.ts'
import { type Doer, writeTrail } from './access/doer.ts'
import { type Answer, refused } from './answer.ts'
import { ofKind } from './people/journalBody.ts'
import { aboutCandidate, findCandidate } from './people/readCandidates.ts'
import { writer } from './people/writeEntry.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

export async function undoOffer(
  ports: Pick<Ports, 'ledger' | 'access' | 'journal' | 'clock' | 'newId'>,
  ask: UndoOfferAsk,
  doer: Doer,
): Promise<Answer<Candidate>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const networkId = network.value.id
  const about = aboutCandidate(ask.candidateId)
  const entries = await ports.journal.about(networkId, [about])
  const step = ofKind(entries, 'state').find(({ entry }) => entry.id === ask.eventId)
  if (step === undefined) {
    return refused(
      'OFFER_STEP_UNKNOWN',
      `the step "${ask.eventId.slice(0, 60)}"`,
      'Look at the steps of the offer again.',
    )
  }
  const given = ofKind(entries, 'gauge given').find(({ entry }) => entry.id === `${ask.eventId} gauge`)
  if (step.entry.takenBack !== null) {
    if (given !== undefined) {
      return refused('GAUGE_GIVEN_BACK', 'the gauge was taken back with this step', 'Give a gauge again instead.')
    }
    await ports.journal.putBack(networkId, ask.eventId)
  } else {
    if (given !== undefined) {
      const problem = await takeGaugeBack(ports, networkId, given.body)
      if (problem !== null) return problem
      await ports.journal.takeBack(networkId, given.entry.id, writer(doer), ports.clock.nowUtc())
    }
    await ports.journal.takeBack(networkId, ask.eventId, writer(doer), ports.clock.nowUtc())
  }
  await writeTrail(ports, doer, { act: 'undoOffer', subject: ask.candidateId })
  return await findCandidate(ports, networkId, ask.candidateId)
}

async function takeGaugeBack(
  { ledger, access, clock }: Pick<Ports, 'ledger' | 'access' | 'clock'>,
  networkId: string,
  given: { gaugeId: string; personId: string; isNewPerson: boolean; isNewGauge: boolean },
): Promise<ReturnType<typeof refused> | null> {
  const gauge = await ledger.gauge(networkId, given.gaugeId)
  const readings = await ledger.readingsOfGauge(networkId, given.gaugeId, '0001-01-01', '9999-12-31')
  if (given.isNewGauge && readings.length > 0) {
    const seen = `${gauge?.code ?? given.gaugeId} has ${readings.length} readings`
    return refused('GAUGE_HAS_READINGS', seen, 'Close the offer, or let another person read the gauge.')
  }
  if (gauge !== null) {
    const closedOn = given.isNewGauge ? clock.nowUtc().slice(0, 10) : gauge.closedOn
    await ledger.saveGauges([{ ...gauge, observerName: null, closedOn }])
  }
  const person = await access.person(given.personId)
  if (person === null) return null
  const gauges = person.gauges.filter((id) => id !== given.gaugeId)
  if (given.isNewPerson && gauges.length === 0) await access.forget(person.id)
  else await access.savePerson({ ...person, gauges })
  return null
}
