/** Everything that the machine interface, version 1, can be asked. */
import {
  acceptedPageAskSchema,
  acceptedPageSchema,
  bulkAnswerSchema,
  machineFindingsSchema,
  machineGaugesSchema,
  machineNetworkSchema,
  machineRollSchema,
  sendBulkAskSchema,
  sendShefAskSchema,
  urgentNowAskSchema,
  urgentNowSchema,
} from '@gaugewright/contract'
import { z } from 'zod'
import {
  acceptedPage,
  machineFindings,
  machineGauges,
  machineNetwork,
  machineRoll,
} from '../../app/machine/machineReads.ts'
import { sendBulk } from '../../app/sendBulk.ts'
import { sendShef } from '../../app/sendShef.ts'
import { urgentNow } from '../../app/urgentNow.ts'
import { type Operation, type OperationCall, reads, sends } from './operation.ts'

export const machineBase = '/api/v1'

const nothing = z.strictObject({})
const oneDay = z.strictObject({
  day: z
    .union([z.iso.date(), z.literal('latest')])
    .meta({ description: 'An observing day, or `latest`.', example: 'latest' }),
})
const callOf = ({ key, idempotencyKey, bodyHash }: OperationCall<unknown>) => ({
  keyId: key.id,
  idempotencyKey,
  bodyHash,
})

export const operations: readonly Operation[] = [
  sends({
    method: 'post',
    path: '/readings',
    id: 'sendBulk',
    scope: 'send',
    summary: 'Send readings',
    description:
      'Up to 10,000 readings in one call, all taken or none; with keepGood the good ones are taken. Each row is answered.',
    ask: sendBulkAskSchema,
    answer: bulkAnswerSchema,
    example: { readings: [{ gauge: 'G0001', day: '2026-05-30', amount: '0.40', unit: 'in' }], keepGood: false },
    run: (ports, call) => sendBulk(ports, call.ask, callOf(call)),
  }),
  sends({
    method: 'post',
    path: '/shef',
    id: 'sendShef',
    scope: 'send',
    summary: 'Send readings as SHEF',
    description:
      'PP over whole days is taken; other elements are counted in the notes. Each line that cannot be read is refused by its place.',
    ask: sendShefAskSchema,
    answer: bulkAnswerSchema,
    example: { text: '.A G0001 20260530 Z DH1300/PP 0.40\n', keepGood: false },
    run: (ports, call) => sendShef(ports, call.ask, callOf(call)),
  }),
  reads({
    method: 'get',
    path: '/network',
    id: 'readNetwork',
    scope: 'read',
    summary: 'The network',
    description: 'Its zone, reading hour, unit, and the days of its record.',
    ask: nothing,
    answer: machineNetworkSchema,
    run: (ports) => machineNetwork(ports),
  }),
  reads({
    method: 'get',
    path: '/gauges',
    id: 'readGauges',
    scope: 'read',
    summary: 'The gauges',
    description: 'Positions are rounded to two decimals, and observers are not named.',
    ask: nothing,
    answer: machineGaugesSchema,
    run: (ports) => machineGauges(ports),
  }),
  reads({
    method: 'get',
    path: '/accepted',
    id: 'readAccepted',
    scope: 'read',
    summary: 'The accepted record',
    description: 'Readings with the decisions in force applied, at most 31 days a page; `next` leads on.',
    ask: acceptedPageAskSchema,
    answer: acceptedPageSchema,
    run: (ports, { ask }) => acceptedPage(ports, ask, `${machineBase}/accepted`),
  }),
  reads({
    method: 'get',
    path: '/days/{day}/roll',
    id: 'readRoll',
    scope: 'read',
    summary: 'The roll of a day',
    description: 'Every gauge expected, and its answer.',
    ask: oneDay,
    answer: machineRollSchema,
    run: (ports, { ask }) => machineRoll(ports, ask.day),
  }),
  reads({
    method: 'get',
    path: '/days/{day}/findings',
    id: 'readFindings',
    scope: 'read',
    summary: 'The findings of a day',
    description:
      'For each reading the odds that it stands, and for doubtful ones the likeliest mistake and the proposal.',
    ask: oneDay,
    answer: machineFindingsSchema,
    run: (ports, { ask }) => machineFindings(ports, ask.day),
  }),
  reads({
    method: 'get',
    path: '/urgent',
    id: 'readUrgent',
    scope: 'urgent',
    summary: 'Urgent reports',
    description: 'As the warning desk sees them, what would change a warning most first. They hold exact positions.',
    ask: urgentNowAskSchema,
    answer: urgentNowSchema,
    run: (ports, { ask }) => urgentNow(ports, ask),
  }),
]
