/** The command line: reads what was asked, runs it, and answers with the exit code. 0 done, 2 bad usage, 1 failed. */
import { Command, CommanderError, InvalidArgumentError } from 'commander'
import { LedgerError } from '../ports/ledgerError.ts'
import { CommandStopped, problemLine } from './commandStopped.ts'
import { addAbsenceCommand } from './commands/absence.ts'
import { addAuditCommand } from './commands/audit.ts'
import { addBackupCommand } from './commands/backup.ts'
import { addCheckCommand } from './commands/check.ts'
import { addContactCommand } from './commands/contact.ts'
import { addDayCommand } from './commands/day.ts'
import { addDecideCommand } from './commands/decide.ts'
import { addDemoCommand } from './commands/demo.ts'
import { addDoctorCommand } from './commands/doctor.ts'
import { addDrillCommand } from './commands/drill.ts'
import { addExpectCommand } from './commands/expect.ts'
import { addExplainCommand } from './commands/explain.ts'
import { addExportCommand } from './commands/export.ts'
import { addExportPersonCommand } from './commands/export-person.ts'
import { addHabitsCommand } from './commands/habits.ts'
import { addImportCommand } from './commands/import.ts'
import { addKeyCommand } from './commands/key.ts'
import { addLeafCommand } from './commands/leaf.ts'
import { addLetterCommand } from './commands/letter.ts'
import { addMailCommand } from './commands/mail.ts'
import { addOfferCommand } from './commands/offer.ts'
import { addOutboxCommand } from './commands/outbox.ts'
import { addPeopleCommand } from './commands/people.ts'
import { addQuietCommand } from './commands/quiet.ts'
import { addRemindCommand } from './commands/remind.ts'
import { addRestoreCommand } from './commands/restore.ts'
import { addRuleCommand } from './commands/rule.ts'
import { addServeCommand } from './commands/serve.ts'
import { addSiteCommand } from './commands/site.ts'
import { addUndoCommand } from './commands/undo.ts'
import { addUrgentCommand } from './commands/urgent.ts'
import { addWatchCommand } from './commands/watch.ts'
import type { World } from './world.ts'

/** @param words  what stands after the name of the program */
export async function run(words: readonly string[], world: World): Promise<number> {
  const pending: Promise<void>[] = []
  const program = new Command('gaugewright')
  program
    .description('The desk of a volunteer precipitation-gauge network.')
    .version(world.version, '-V, --version')
    .exitOverride()
    .showHelpAfterError('(try --help)')
    .configureOutput({
      writeOut: (text) => pending.push(world.out.write(text)),
      writeErr: (text) => pending.push(world.err.write(text)),
    })
  for (const add of [
    addServeCommand,
    addDemoCommand,
    addImportCommand,
    addDayCommand,
    addExplainCommand,
    addDecideCommand,
    addUndoCommand,
    addUrgentCommand,
    addHabitsCommand,
    addRuleCommand,
    addRemindCommand,
    addOutboxCommand,
    addMailCommand,
    addPeopleCommand,
    addOfferCommand,
    addLetterCommand,
    addContactCommand,
    addSiteCommand,
    addDrillCommand,
    addQuietCommand,
    addLeafCommand,
    addAbsenceCommand,
    addAuditCommand,
    addExportPersonCommand,
    addCheckCommand,
    addExpectCommand,
    addWatchCommand,
    addExportCommand,
    addKeyCommand,
    addBackupCommand,
    addRestoreCommand,
    addDoctorCommand,
  ]) {
    add(program, world)
  }
  try {
    await program.parseAsync(words, { from: 'user' })
    return 0
  } catch (error) {
    if (error instanceof CommandStopped) {
      await world.err.write(`${error.line}\n`)
      return error.exitCode
    }
    if (error instanceof CommanderError || error instanceof InvalidArgumentError) {
      return error.exitCode === 0 ? 0 : 2
    }
    if (error instanceof LedgerError) {
      await world.err.write(`${problemLine(error.problem)}\n`)
      return 1
    }
    const message = error instanceof Error ? error.message : String(error)
    await world.err.write(`COMMAND_FAILED  ${oneLine(message)}  Run "gaugewright doctor" if it comes again.\n`)
    return 1
  } finally {
    await Promise.all(pending)
  }
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').slice(0, 400)
}
