import { LedgerError } from '../ports/ledgerError.ts'

export function unknownNetwork(networkId: string): LedgerError {
  return new LedgerError('NETWORK_UNKNOWN', `The ledger has no network "${networkId}".`, 'Import its gauges first.')
}

export function unknownGauge(gaugeId: string, networkId: string): LedgerError {
  return new LedgerError(
    'LEDGER_GAUGE_UNKNOWN',
    `The network "${networkId}" has no gauge with the id "${gaugeId}".`,
    'Save the gauge before its readings.',
  )
}

export function unknownReading(readingId: string): LedgerError {
  return new LedgerError('READING_UNKNOWN', `The ledger has no reading "${readingId}".`, 'Look the reading up again.')
}

export function unknownPerson(personId: string): LedgerError {
  return new LedgerError('PERSON_UNKNOWN', `Nobody has the id "${personId}".`, 'Look at "gaugewright people list".')
}

export function mailTaken(): LedgerError {
  return new LedgerError(
    'MAIL_TAKEN',
    'Another person has this mail address.',
    'Give each person an address of their own.',
  )
}
