import {
  addOfferAskSchema,
  changeOfferAskSchema,
  forgetCandidateAskSchema,
  giveGaugeAskSchema,
  moveOfferAskSchema,
  offerPageWordsSchema,
  offerStates,
  undoOfferAskSchema,
} from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { addOffer } from '../../app/addOffer.ts'
import { answered } from '../../app/answer.ts'
import { changeOffer } from '../../app/changeOffer.ts'
import { forgetCandidate } from '../../app/forgetCandidate.ts'
import { giveGauge } from '../../app/giveGauge.ts'
import { moveOffer } from '../../app/moveOffer.ts'
import { peopleDesk } from '../../app/peopleDesk.ts'
import { readOfferPage } from '../../app/readOfferPage.ts'
import { setOfferPage } from '../../app/setOfferPage.ts'
import { undoOffer } from '../../app/undoOffer.ts'
import type { Ports } from '../../ports/ports.ts'
import { answerWith, askFrom, ledgerCommand } from '../answerCommand.ts'
import { CommandStopped, valueFrom } from '../commandStopped.ts'
import { printOffer, printOffers } from '../printOffers.ts'
import type { World } from '../world.ts'

interface OfferWords {
  name?: string
  mail?: string
  phone?: string
  language?: string
  place?: string
  lat?: number
  lon?: number
  yard?: string
  yardWords?: string
  hour?: string
  hours?: string
}

export function addOfferCommand(program: Command, world: World): void {
  const offer = ledgerCommand(program, 'offer', 'people who offer to observe: from the first word to the first reading')
  offer
    .command('list', { isDefault: true })
    .description('every offer with its state, how long it rests there, and what comes next')
    .action((_own: object, command: Command) => answerWith(world, command, peopleDesk, printOffers))
  offer
    .command('show')
    .description('one offer with its steps')
    .argument('<offer>', 'id of the offer')
    .action((id: string, _own: object, command: Command) =>
      answerWith(world, command, async (ports) => answered(await candidate(ports, id)), printOffer),
    )
  withWords(
    offer.command('add').description('write down an offer that came by telephone, mail or word of mouth'),
  ).action((own: OfferWords, command: Command) =>
    answerWith(
      world,
      command,
      async (ports) => addOffer(ports, askFrom(addOfferAskSchema, { offer: fieldsFrom(own) }), atTheCommandLine),
      printOffer,
    ),
  )
  withWords(
    offer.command('change').description('put right what an offer says').argument('<offer>', 'id of the offer'),
  ).action((id: string, own: OfferWords, command: Command) =>
    answerWith(
      world,
      command,
      async (ports) => {
        const fields = { ...(await candidate(ports, id)).offer, ...fieldsFrom(own) }
        return changeOffer(ports, askFrom(changeOfferAskSchema, { candidateId: id, offer: fields }), atTheCommandLine)
      },
      printOffer,
    ),
  )
  offer
    .command('move')
    .description('an offer comes to another state, or is closed')
    .argument('<offer>', 'id of the offer')
    .argument('<state>', `one of: ${offerStates.join(', ')}`)
    .option('--why <words>', 'why; needed to close', '')
    .action((candidateId: string, state: string, { why }: { why: string }, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) => moveOffer(ports, askFrom(moveOfferAskSchema, { candidateId, state, why }), atTheCommandLine),
        printOffer,
      ),
    )
  offer
    .command('give')
    .description('a candidate gets a gauge: one that nobody reads, or a new one')
    .argument('<offer>', 'id of the offer')
    .option('--gauge <code>', 'code of a gauge that is there')
    .option('--name <name>', 'name of a new gauge')
    .option('--lat <degrees>', 'where it stands', Number)
    .option('--lon <degrees>', 'where it stands', Number)
    .option('--elevation <metres>', 'above sea level', Number)
    .action(
      (
        candidateId: string,
        own: { gauge?: string; name?: string; lat?: number; lon?: number; elevation?: number },
        command: Command,
      ) =>
        answerWith(
          world,
          command,
          async (ports) => {
            const gauge =
              own.gauge === undefined
                ? { name: own.name, latDeg: own.lat, lonDeg: own.lon, elevationM: own.elevation ?? null }
                : { code: own.gauge }
            return giveGauge(ports, askFrom(giveGaugeAskSchema, { candidateId, gauge }), atTheCommandLine)
          },
          printOffer,
        ),
    )
  offer
    .command('undo')
    .description('takes a step back, or puts it back')
    .argument('<offer>', 'id of the offer')
    .argument('<step>', 'id of the step, as "offer show" tells it')
    .action((candidateId: string, eventId: string, _own: object, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) => undoOffer(ports, askFrom(undoOfferAskSchema, { candidateId, eventId }), atTheCommandLine),
        printOffer,
      ),
    )
  offer
    .command('forget')
    .description('erases an offer with everything about it')
    .argument('<offer>', 'id of the offer')
    .action((candidateId: string, _own: object, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) => forgetCandidate(ports, askFrom(forgetCandidateAskSchema, { candidateId }), atTheCommandLine),
        () => 'The offer is erased.\n',
      ),
    )
  offer
    .command('page')
    .description('the public page: what it says; with --open or --close whether it takes offers')
    .option('--open', 'take offers')
    .option('--close', 'take none')
    .option('--english <words>', 'its words in English')
    .option('--spanish <words>', 'its words in Spanish')
    .option('--keep <months>', 'closed offers are erased after so many months', Number)
    .action(
      (own: { open?: boolean; close?: boolean; english?: string; spanish?: string; keep?: number }, command: Command) =>
        answerWith(
          world,
          command,
          async (ports) => {
            const read = await readOfferPage(ports)
            if (!read.ok || Object.keys(own).length === 0) return read
            const { isOpen, en, es, keepMonths } = read.value
            return setOfferPage(
              ports,
              askFrom(offerPageWordsSchema, {
                isOpen: own.open === true || (isOpen && own.close !== true),
                en: own.english ?? en,
                es: own.spanish ?? es,
                keepMonths: own.keep ?? keepMonths,
              }),
              atTheCommandLine,
            )
          },
          ({ isOpen, en, es, keepMonths }) =>
            `The page is ${isOpen ? 'open' : 'closed'}. Closed offers are kept for ${keepMonths} months.\n\n${en}\n\n${es}\n`,
        ),
    )
}

function withWords(command: Command): Command {
  return command
    .option('--name <name>', 'of the person')
    .option('--mail <address>', 'mail address')
    .option('--phone <number>', 'telephone')
    .option('--language <language>', 'en or es')
    .option('--place <words>', 'where the gauge would stand')
    .option('--lat <degrees>', 'where, on the map', Number)
    .option('--lon <degrees>', 'where, on the map', Number)
    .option('--yard <kind>', 'open, some trees, built-up or other')
    .option('--yard-words <words>', 'what stands there')
    .option('--hour <time>', 'hour at which they can read: 07:00')
    .option('--hours <words>', 'what there is to say about the hours')
}

function fieldsFrom({ lat, lon, yardWords, hour, ...words }: OfferWords): Record<string, unknown> {
  return {
    ...words,
    ...(lat !== undefined && { latDeg: lat }),
    ...(lon !== undefined && { lonDeg: lon }),
    ...(yardWords !== undefined && { yardWords }),
    ...(hour !== undefined && { readingTime: hour }),
  }
}

async function candidate(ports: Ports, id: string) {
  const found = valueFrom(await peopleDesk(ports)).candidates.find((one) => one.id === id)
  if (found !== undefined) return found
  const problem = { code: 'OFFER_UNKNOWN', seen: `the offer "${id}"`, advice: 'Look at "gaugewright offer list".' }
  throw new CommandStopped(problem)
}
