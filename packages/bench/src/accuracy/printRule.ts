/** What a rule "let stand when at least this sure" would let through of one test network, as text. */
import { figure, percent, table } from '../print/table.ts'
import type { RuleScore } from '../score/scoreRule.ts'

export function printRule(title: string, scores: readonly RuleScore[]): string {
  const headings = [
    'let stand at',
    'let stand',
    'left to a person',
    'wrong expected',
    'P10',
    'P90',
    'really wrong',
    'ratio',
  ]
  const rows = scores.map((score) => [
    String(score.letStandAt),
    String(score.letStand),
    percent(score.leftShare),
    figure(score.expectedWrong, 1),
    String(score.lowWrong),
    String(score.highWrong),
    String(score.reallyWrong),
    figure(score.ratio, 2),
  ])
  return `${title}\n${table(headings, rows)}`
}
