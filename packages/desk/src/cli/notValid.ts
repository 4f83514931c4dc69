import { refused } from '../app/answer.ts'
import { CommandStopped } from './commandStopped.ts'

/** The first thing that does not fit what was asked, as bad usage. */
export function notValid(issue: { path: PropertyKey[]; message: string } | undefined): CommandStopped {
  const seen = issue === undefined ? 'what was asked' : `${issue.path.join('.')}: ${issue.message}`
  return new CommandStopped(refused('ASK_NOT_VALID', seen, 'See --help for what it must be.').problem, 2)
}
