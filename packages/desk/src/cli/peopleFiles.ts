/** Parts of the command "people" that read and write files. */
import { readFile, writeFile } from 'node:fs/promises'
import { exportPeopleAskSchema, importPeopleAskSchema } from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../app/access/doer.ts'
import { duplicatePeople } from '../app/duplicatePeople.ts'
import { exportPeople } from '../app/exportPeople.ts'
import { importPeople } from '../app/importPeople.ts'
import { answerWith, askFrom } from './answerCommand.ts'
import { plainTable } from './plainTable.ts'
import type { World } from './world.ts'

export function addPeopleFiles(people: Command, world: World): void {
  people
    .command('import')
    .description('observers from CSV (name, mail, phone, language, gauges) or vCard; whole or not at all')
    .argument('<file>', 'a .csv or .vcf file')
    .option('--keep-good', 'take the good rows and tell the others', false)
    .action(async (file: string, { keepGood }: { keepGood: boolean }, command: Command) => {
      const format = /\.(vcf|vcard)$/i.test(file) ? 'vcard' : 'csv'
      const ask = askFrom(importPeopleAskSchema, { format, text: await readFile(file, 'utf8'), keepGood })
      await answerWith(
        world,
        command,
        (ports) => importPeople(ports, ask, atTheCommandLine),
        ({ added, changed, same, refused }) => {
          const lines = refused.map(({ line, seen, advice }) => `  ${line}: ${seen}. ${advice}`)
          const head =
            refused.length > 0 && !keepGood
              ? 'Nothing was taken.'
              : `${added} added, ${changed} changed, ${same} as they were.`
          return `${[head, ...lines].join('\n')}\n`
        },
      )
    })
  people
    .command('export')
    .description('observers as CSV or vCard')
    .argument('<file>', 'a .csv or .vcf file to write')
    .action(async (file: string, _own: object, command: Command) => {
      const ask = askFrom(exportPeopleAskSchema, { format: /\.(vcf|vcard)$/i.test(file) ? 'vcard' : 'csv' })
      await answerWith(
        world,
        command,
        async (ports) => {
          const out = await exportPeople(ports, ask, atTheCommandLine)
          if (out.ok) await writeFile(file, out.value.text)
          return out
        },
        () => `People are in ${file}.\n`,
      )
    })
  people
    .command('duplicates')
    .description('who may be there twice')
    .action((_own: object, command: Command) =>
      answerWith(world, command, duplicatePeople, ({ pairs }) => {
        if (pairs.length === 0) return 'Nobody seems to be there twice.\n'
        const table = plainTable(['one', 'other', 'because'])
        for (const { a, b, reasons } of pairs)
          table.push([`${a.name} (${a.about})`, `${b.name} (${b.about})`, reasons.join(', ')])
        return `${table.toString()}\n`
      }),
    )
}
