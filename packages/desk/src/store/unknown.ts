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

export function unknownKey(id: string): LedgerError {
  return new LedgerError('KEY_UNKNOWN', `There is no key with the id "${id}".`, 'Look at "gaugewright key list".')
}

export function keyTaken(): LedgerError {
  return new LedgerError('ID_TAKEN', 'The key, or its id, is there already.', 'Make a fresh one.')
}

export function deliveryTaken(): LedgerError {
  return new LedgerError('ID_TAKEN', 'This delivery is there already.', 'Look up what it was answered.')
}
