/**
 * Run as a process of its own by ledgerSurvivesKill.test.ts: appends without end, and says on stdout what the ledger has
 * acknowledged, until it is killed. Arguments: ledger file, a number that makes its ids and its amounts its own.
 */
import { writeSync } from 'node:fs'
import { isoFromEpochDay, type Reading } from '@gaugewright/science'
import { openSqliteLedger } from '../../src/store/sqlite/openSqliteLedger.ts'

const [path = '', roundText = ''] = process.argv.slice(2)
const round = Number(roundText)
const ledger = await openSqliteLedger(path, { create: false })

function reading(batch: number, part: number): Reading {
  const day = isoFromEpochDay(20_000 + batch)
  return {
    id: `${round}-${batch}-${part}`,
    gaugeId: `gauge-${part}`,
    kind: 'daily',
    firstDay: day,
    lastDay: day,
    // Another amount each round: the first days are corrected over and over.
    amountUm: 1_000_000 * round + 1000 * part + (batch % 1000),
    isTrace: false,
    startsAtUtc: `${day}T05:00:00Z`,
    endsAtUtc: `${day}T05:00:00Z`,
    text: 'x'.repeat(batch % 200),
    unit: 'mm',
    remark: null,
    receivedAtUtc: '2026-01-01T00:00:00Z',
    door: 'machine',
    supersedes: null,
  }
}

writeSync(1, 'ready\n')
for (let batch = 0; ; batch++) {
  const count = batch % 10 === 9 ? 400 : 1 + (batch % 4)
  if (batch % 10 === 5) {
    // A load of several steps: whole or not at all, too.
    const load = await ledger.load('north')
    await load.appendReadings([reading(batch, 0)])
    await load.appendReadings([reading(batch, 1), reading(batch, 2)])
    await load.commit()
    writeSync(1, `r ${batch} 3\n`)
  } else {
    await ledger.appendReadings(
      'north',
      Array.from({ length: count }, (_, part) => reading(batch, part)),
    )
    writeSync(1, `r ${batch} ${count}\n`)
  }
  await ledger.appendDecision('north', {
    id: `d${round}-${batch}`,
    readingId: `${round}-${batch}-0`,
    verdict: 'stands',
    amended: null,
    by: { kind: 'person', name: 'A. Person' },
    reason: '',
    decidedAtUtc: '2026-01-01T00:00:00Z',
    undoes: null,
  })
  writeSync(1, `d ${batch}\n`)
}
