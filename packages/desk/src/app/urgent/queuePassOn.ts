/**
 * Puts a report's coded text into the outbox and writes down that it was passed on. The message comes first, under a key of
 * its own: pressed again after a crash in between, it is not sent twice.
 */
import { createHash } from 'node:crypto'
import type { Destination, PassOnForm } from '@gaugewright/contract'
import type { NetworkSettings } from '../../ports/ledger.ts'
import type { OutgoingContent } from '../../ports/outbox.ts'
import type { Ports } from '../../ports/ports.ts'
import type { ReportNow } from './foldEvents.ts'
import type { UrgentDoer } from './urgentDoer.ts'

export interface PassOnAct {
  network: NetworkSettings
  now: ReportNow
  form: PassOnForm
  destination: Destination
  text: string
  doer: UrgentDoer
}

export async function queuePassOn(
  ports: Pick<Ports, 'urgent' | 'outbox' | 'clock' | 'newId'>,
  { network, now, form, destination, text, doer }: PassOnAct,
): Promise<void> {
  const nowUtc = ports.clock.nowUtc()
  const content = contentOf({ network, now, form, destination, text })
  const filing = createHash('sha256').update(JSON.stringify(now.report)).digest('hex').slice(0, 16)
  const id = ports.newId()
  await ports.outbox.queue([
    {
      id,
      networkId: network.id,
      key: `urgent ${now.id} ${filing} ${form} ${destination.way} ${destination.to}`,
      purpose: 'urgent report',
      content,
      // A second copy does no harm: files have one name, a webhook knows the message by its id.
      repeatable: destination.way !== 'mail',
      isSecret: false,
      by: doer.by,
      queuedAtUtc: nowUtc,
      notAfterUtc: null,
    },
  ])
  await ports.urgent.append(network.id, {
    id: ports.newId(),
    reportId: now.id,
    atUtc: nowUtc,
    ...doer,
    what: 'passed on',
    form,
    way: destination.way,
    to: destination.name,
    text,
    outgoingId: id,
  })
}

function contentOf({ network, now, form, destination, text }: Omit<PassOnAct, 'doer'>): OutgoingContent {
  const { way, to } = destination
  switch (way) {
    case 'mail':
      return { kind: 'mail', to, subject: `${network.name}: urgent report, ${now.report.seen.kind}`, text, headers: {} }
    case 'webhook':
      return { kind: 'webhook', url: to, body: JSON.stringify({ form, text, report: withoutPerson(now) }) }
    case 'file': {
      const stamp = now.report.seenAtUtc.replace(/[^0-9TZ]/g, '').slice(0, 15)
      const ending = form === 'SHEF' ? 'shef' : 'txt'
      return { kind: 'file', folder: to, name: `urgent-${stamp}-${now.id.slice(0, 8)}-${now.filings}.${ending}`, text }
    }
  }
}

/** What goes to another system names nobody. */
function withoutPerson({ id, report, receivedAtUtc }: ReportNow): object {
  const { by: _by, photoIds: _photoIds, ...rest } = report
  return { ...rest, id, receivedAtUtc }
}
