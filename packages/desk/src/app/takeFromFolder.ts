/**
 * Take what waits in a folder: each file whole or not at all, each content once, however often or under whatever name it
 * comes, and across a crash at any instant. What cannot be written now is left for the next look.
 */
import { isAtLeast } from '@gaugewright/contract'
import type { Delivery } from '../ports/deliveries.ts'
import type { InFolder, Outcome, Waiting } from '../ports/folders.ts'
import type { IntakeFiles } from '../ports/intakeFiles.ts'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { cameBefore, wordRefusal, wordTaken } from './folders/wordReport.ts'
import type { FileReport, ImportAsk } from './import/importAsk.ts'
import { importFiles } from './importFiles.ts'

type FolderPorts = Pick<Ports, 'ledger' | 'access' | 'clock' | 'newId'>

export type FolderAsk = Pick<ImportAsk, 'unit' | 'dayFormat' | 'decimal' | 'columns' | 'missing' | 'localTimeZone'>

export interface FolderTaken {
  files: { name: string; outcome: Outcome | 'left'; report: string }[]
}

/** Of the ledger, not of the file: the file waits until they are over. */
const passing = new Set(['LEDGER_BUSY', 'LEDGER_CANNOT_WRITE', 'LEDGER_DAMAGED'])

export async function takeFromFolder(
  ports: FolderPorts,
  files: IntakeFiles,
  folder: InFolder,
  ask: FolderAsk,
): Promise<Answer<FolderTaken>> {
  const taken: FolderTaken = { files: [] }
  const network = (await ports.ledger.networks())[0]
  if (network === undefined) {
    return refused('LEDGER_EMPTY', 'the ledger holds no network yet', 'Import its gauges first.')
  }
  for await (const waiting of folder.waiting()) {
    const { outcome, report } = await takeOne(ports, files, waiting, ask, network.id)
    if (outcome !== 'left') await folder.settle(waiting, outcome, report)
    taken.files.push({ name: waiting.name, outcome, report })
  }
  return answered(taken)
}

async function takeOne(
  ports: FolderPorts,
  files: IntakeFiles,
  waiting: Waiting,
  ask: FolderAsk,
  networkId: string,
): Promise<{ outcome: Outcome | 'left'; report: string }> {
  const sender = await senderOf(ports, waiting)
  if (!sender.ok) return { outcome: 'refused', report: wordRefusal(waiting.name, sender.problem) }
  const key = `file ${waiting.sha256}`
  const before = await ports.ledger.delivery(networkId, key)
  if (before !== null) return { outcome: 'taken', report: reportAgain(waiting, before) }
  const answer = await importFiles(ports, files, {
    ...ask,
    paths: waiting.paths,
    network: { id: networkId },
    flagged: 'keep',
    wereInches: false,
    delivery: { key, bodyHash: waiting.sha256, sender: sender.value.name, name: waiting.name },
    ...(waiting.from !== null && { readingsOnly: true }),
    ...(sender.value.gauges !== null && { onlyGaugeIds: sender.value.gauges }),
  })
  if (answer.ok) return { outcome: 'taken', report: wordTaken(waiting.name, answer.value.files) }
  const report = wordRefusal(waiting.name, answer.problem)
  return { outcome: passing.has(answer.problem.code) ? 'left' : 'refused', report }
}

/** After a crash between the keeping and the moving, the report is written as it would have been. */
function reportAgain(waiting: Waiting, before: Delivery): string {
  const reports = JSON.parse(before.answer) as FileReport[]
  const first = wordTaken(before.name, reports)
  return before.name === waiting.name ? first : cameBefore(waiting.name, before, first)
}

/** Whoever can reach a folder may use it. A mail comes from somebody known: an observer for their own gauges. */
async function senderOf(
  { access }: FolderPorts,
  { from }: Waiting,
): Promise<Answer<{ name: string; gauges: ReadonlySet<string> | null }>> {
  if (from === null) return answered({ name: 'folder', gauges: null })
  const person = await access.personByMail(from)
  if (person === null) {
    return refused(
      'SENDER_UNKNOWN',
      `a mail from ${from === '' ? 'nobody' : from}`,
      'Add the person with this address.',
    )
  }
  if (person.role === 'viewer') {
    return refused('ROLE_TOO_LOW', `${from} is a viewer`, 'Readings come from observers, colleagues and coordinators.')
  }
  return answered({ name: person.id, gauges: isAtLeast(person.role, 'colleague') ? null : new Set(person.gauges) })
}
