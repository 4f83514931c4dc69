/**
 * Run as a process of its own by outboxSurvivesKill.test.ts: sends what is due from the outbox of a ledger file, again and
 * again, until it is killed. Arguments: ledger file, how fast its clock runs ahead (ms), `once` to end when nothing is due.
 */
import { writeSync } from 'node:fs'
import { sendDue } from '../../src/app/outgoing/sendDue.ts'
import { carriers } from '../../src/carriers/carriers.ts'
import { newUuidV7 } from '../../src/store/newUuidV7.ts'
import { openSqlitePorts } from '../../src/store/sqlite/openSqlitePorts.ts'

const [path = '', aheadText = '0', once = ''] = process.argv.slice(2)
const aheadMs = Number(aheadText)
const ports = {
  ...(await openSqlitePorts(path, { create: false })),
  carriers,
  outgoingSecrets: { smtpPassword: null, webhookSecret: null },
  clock: { nowUtc: () => new Date(Date.now() + aheadMs).toISOString() },
  newId: newUuidV7,
}
writeSync(1, 'ready\n')
do {
  await sendDue(ports)
  await new Promise((resume) => setTimeout(resume, 5))
} while (once !== 'once')
await ports.ledger.close()
