import { writeFile } from 'node:fs/promises'
import { leafAskSchema, networkLetterAskSchema, ownerAtTheDesk } from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { leaf } from '../../app/leaf.ts'
import { networkLetter } from '../../app/networkLetter.ts'
import { rollOfGauge } from '../../app/rollOfGauge.ts'
import { sendLeaf } from '../../app/sendLeaf.ts'
import { answerWith, askFrom, ledgerCommand } from '../answerCommand.ts'
import { printContacts } from '../printOffers.ts'
import type { World } from '../world.ts'

const actor = ownerAtTheDesk

export function addLeafCommand(program: Command, world: World): void {
  ledgerCommand(program, 'leaf', 'an observer’s month or year on one page, to print; or with --send by mail')
    .argument('<gauge>', 'code of the gauge')
    .argument('<period>', 'a month such as 2031-05, or a year')
    .option('--out <file>', 'write the page here')
    .option('--send', 'send it to the observer instead', false)
    .action(async (gauge: string, period: string, own: { out?: string; send: boolean }, command: Command) => {
      const ask = askFrom(leafAskSchema, { gauge, period })
      if (own.send) {
        return await answerWith(
          world,
          command,
          (ports) => sendLeaf(ports, { ...ask, actor, deskUrl: null }, atTheCommandLine),
          printContacts,
        )
      }
      await answerWith(
        world,
        command,
        async (ports) => {
          const page = await leaf(ports, { ...ask, actor })
          if (page.ok) await writeFile(own.out ?? page.value.fileName, page.value.html)
          return page
        },
        ({ fileName }) => `The page is in ${own.out ?? fileName}.\n`,
      )
    })
  ledgerCommand(program, 'network-letter', 'the network’s month or year on a page for all observers')
    .argument('<period>', 'a month such as 2031-05, or a year')
    .option('--out <file>', 'write the page here')
    .option('--words <text>', 'a paragraph of your own', '')
    .option('--names', 'name observers', false)
    .action(async (period: string, own: { out?: string; words: string; names: boolean }, command: Command) => {
      const ask = askFrom(networkLetterAskSchema, { period, words: own.words, names: own.names ? 'yes' : 'no' })
      await answerWith(
        world,
        command,
        async (ports) => {
          const page = await networkLetter(ports, ask)
          if (page.ok) await writeFile(own.out ?? page.value.fileName, page.value.html)
          return page
        },
        ({ fileName }) => `The page is in ${own.out ?? fileName}.\n`,
      )
    })
  ledgerCommand(program, 'roll', 'how one gauge was answered over the last year')
    .argument('<gauge>', 'code of the gauge')
    .action((gauge: string, _own: object, command: Command) =>
      answerWith(
        world,
        command,
        (ports) => rollOfGauge(ports, { gauge, actor }),
        ({ strip, answeredShare, currentStreak, longestStreak }) =>
          `${answeredShare === null ? 'no morning expected' : `${Math.round(answeredShare * 100)} % answered`}; ${currentStreak} in a row now, ${longestStreak} at most\n${strip.match(/.{1,70}/g)?.join('\n') ?? ''}\n(a answered, c covered by a total, w away, s silent)\n`,
      ),
    )
}
