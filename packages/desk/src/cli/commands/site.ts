import { readFile, writeFile } from 'node:fs/promises'
import {
  askSurveyAskSchema,
  ownerAtTheDesk,
  readSiteAskSchema,
  saveSurveyAskSchema,
  withdrawSurveyAskSchema,
  yardPlanSchema,
} from '@gaugewright/contract'
import type { Command } from 'commander'
import { atTheCommandLine } from '../../app/access/doer.ts'
import { refused } from '../../app/answer.ts'
import { askSurvey } from '../../app/askSurvey.ts'
import { readSite } from '../../app/readSite.ts'
import { saveSurvey } from '../../app/saveSurvey.ts'
import { sendSiteReport } from '../../app/sendSiteReport.ts'
import { siteReport } from '../../app/siteReport.ts'
import { sitesDue } from '../../app/sitesDue.ts'
import { withdrawSurvey } from '../../app/withdrawSurvey.ts'
import { answerWith, askFrom, ledgerCommand } from '../answerCommand.ts'
import { CommandStopped } from '../commandStopped.ts'
import { planFromSightings } from '../planFromSightings.ts'
import { printContacts } from '../printOffers.ts'
import { printSite, printSitesDue } from '../printSite.ts'
import type { World } from '../world.ts'

const actor = ownerAtTheDesk

export function addSiteCommand(program: Command, world: World): void {
  const site = ledgerCommand(
    program,
    'site',
    'sites of gauges: surveys with their dates, exposure classes, what is due',
  )
  site
    .command('due', { isDefault: true })
    .description('sites to look at again')
    .option('--all', 'those that are not due, too', false)
    .action(({ all }: { all: boolean }, command: Command) =>
      answerWith(world, command, sitesDue, (due) => printSitesDue(due, all)),
    )
  site
    .command('show')
    .description('every survey of a site, newest first')
    .argument('<gauge>', 'code of the gauge')
    .action((gauge: string, _own: object, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) => readSite(ports, { ...askFrom(readSiteAskSchema, { about: `gauge ${gauge}` }), actor }),
        printSite,
      ),
    )
  site
    .command('survey')
    .description('save a survey from a yard plan, or from what was seen standing at the gauge')
    .argument('<gauge>', 'code of the gauge')
    .option('--plan <file>', 'yard plan as JSON')
    .option(
      '--seen <file>',
      'CSV with the columns name, kind, bearing_deg, distance_m, top_m and, if wanted, width_deg',
    )
    .option('--rim <metres>', 'height of the rim, with --seen', Number)
    .option('--on <day>', 'day of the survey', new Date().toISOString().slice(0, 10))
    .option('--note <words>', 'what there is to say', '')
    .action(
      async (
        gauge: string,
        own: { plan?: string; seen?: string; rim?: number; on: string; note: string },
        command: Command,
      ) => {
        const plan = await planFrom(own)
        await answerWith(
          world,
          command,
          async (ports) => {
            const typed = { about: `gauge ${gauge}`, id: ports.newId(), surveyedOn: own.on, note: own.note, plan }
            return saveSurvey(ports, { ...askFrom(saveSurveyAskSchema, typed), actor }, atTheCommandLine)
          },
          printSite,
        )
      },
    )
  site
    .command('report')
    .description('a site on one page, to print; or with --send to its observer')
    .argument('<gauge>', 'code of the gauge')
    .option('--out <file>', 'write the page here')
    .option('--send', 'send it by mail instead', false)
    .action(async (gauge: string, own: { out?: string; send: boolean }, command: Command) => {
      const about = askFrom(readSiteAskSchema, { about: `gauge ${gauge}` })
      if (own.send) {
        return await answerWith(
          world,
          command,
          (ports) => sendSiteReport(ports, { ...about, actor, deskUrl: null }, atTheCommandLine),
          printContacts,
        )
      }
      await answerWith(
        world,
        command,
        async (ports) => {
          const report = await siteReport(ports, { ...about, actor })
          if (report.ok) await writeFile(own.out ?? report.value.fileName, report.value.html)
          return report
        },
        ({ fileName }) => `The page is in ${own.out ?? fileName}.\n`,
      )
    })
  site
    .command('ask')
    .description('ask for a new survey before its time')
    .argument('<gauge>', 'code of the gauge')
    .argument('<why>', 'the reason')
    .action((gauge: string, why: string, _own: object, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) =>
          askSurvey(
            ports,
            { ...askFrom(askSurveyAskSchema, { about: `gauge ${gauge}`, why }), actor },
            atTheCommandLine,
          ),
        printSite,
      ),
    )
  site
    .command('withdraw')
    .description('takes a survey back, or with --undo puts it back')
    .argument('<gauge>', 'code of the gauge')
    .argument('<survey>', 'id of the survey')
    .option('--undo', 'put it back', false)
    .action((gauge: string, surveyId: string, { undo }: { undo: boolean }, command: Command) =>
      answerWith(
        world,
        command,
        async (ports) => {
          const ask = askFrom(withdrawSurveyAskSchema, { about: `gauge ${gauge}`, surveyId, undo })
          return withdrawSurvey(ports, { ...ask, actor }, atTheCommandLine)
        },
        printSite,
      ),
    )
}

async function planFrom({ plan, seen, rim }: { plan?: string; seen?: string; rim?: number }): Promise<unknown> {
  if (plan !== undefined) {
    try {
      return askFrom(yardPlanSchema, JSON.parse(await readFile(plan, 'utf8')))
    } catch (error) {
      if (error instanceof CommandStopped) throw error
      const said = error instanceof Error ? error.message : String(error)
      throw new CommandStopped(refused('PLAN_UNREADABLE', `${plan}: ${said}`, 'Give a yard plan as JSON.').problem)
    }
  }
  if (seen === undefined || rim === undefined) {
    throw new CommandStopped(
      refused('PLAN_UNREADABLE', 'neither --plan nor --seen with --rim', 'Give one of the two.').problem,
      2,
    )
  }
  const answer = planFromSightings(await readFile(seen, 'utf8'), rim)
  if (!answer.ok) throw new CommandStopped(answer.problem)
  return answer.value
}
