/** The rule in the terminal: what is in force and since when, what was set before, what it would do. Pure. */
import type { Rule, RulePoint, RulePreview, RuleSetting } from '@gaugewright/contract'
import { plainTable } from './plainTable.ts'

export function printRule(rule: Rule): string {
  const [inForce, ...before] = rule.history
  const lines = [`${rule.network.name}: ${inWords(rule.letStandAt)}`]
  lines.push(
    rule.letStandAt === null
      ? `Readings that stand with odds below ${rule.docketBelow} come to the docket.`
      : 'Whatever is less sure comes to the docket. Readings without a usable neighbour are decided by nobody.',
  )
  if (inForce !== undefined) lines.push(`Set ${settingLine(inForce)}`)
  if (before.length > 0) lines.push('', 'Before:')
  for (const setting of before) lines.push(`  ${inWords(setting.letStandAt)}, set ${settingLine(setting)}`)
  return `${lines.join('\n')}\n`
}

function inWords(letStandAt: number | null): string {
  return letStandAt === null ? 'no rule, everything is left to a person' : `let stand at ${letStandAt} and above`
}

function settingLine({ setAtUtc, by, why }: RuleSetting): string {
  return `${setAtUtc} by ${by}: ${why}`
}

/** Thresholds that are always shown, beside the one in force, the one asked for and the one found. */
const USUAL = [0.9, 0.95, 0.98, 0.99, 0.995]

/** @param marked  thresholds of interest, such as the one in force */
export function printRulePreview(preview: RulePreview, marked: readonly (number | null)[]): string {
  const { firstDay, lastDay, mornings, readings, cannotTell, at, wished } = preview
  const words = [
    `${mornings} mornings, ${firstDay} to ${lastDay}, each judged as it was that morning: ${readings} readings` +
      (cannotTell > 0 ? `, and ${cannotTell} without a usable neighbour, which no rule decides.` : '.'),
  ]
  const rows = preview.points.filter(({ letStandAt }) => [...USUAL, ...marked].includes(letStandAt))
  words.push('', curveTable(rows, preview, marked), '')
  words.push(
    'Readings a morning; a busy morning is one in ten. Ranges hold in eight cases of ten. * in force or asked for.',
    'Counted by the odds alone: in networks with known mistakes there were really half to twice as many.',
  )
  if (at !== null) {
    words.push(
      `At ${at.letStandAt}, in these mornings: ${at.expectedWrong.toFixed(1)} wrong readings expected, ${at.low} to ${at.high}.`,
    )
  }
  if (wished !== null) {
    words.push(
      wished.letStandAt === null
        ? `No rule can promise ${wished.wrongAYear} wrong readings a year.`
        : `For at most ${wished.wrongAYear} wrong readings a year: let stand at ${wished.letStandAt}.`,
    )
  }
  return `${words.join('\n')}\n`
}

function curveTable(rows: readonly RulePoint[], preview: RulePreview, marked: readonly (number | null)[]): string {
  const table = plainTable([
    'let stand at',
    'let stand',
    'left to you',
    'busy morning',
    'share left',
    'wrong a month',
    'wrong a year',
  ])
  const { mornings, readings } = preview
  for (const row of rows) {
    table.push([
      `${row.letStandAt}${marked.includes(row.letStandAt) ? ' *' : ''}`,
      (row.letStand / mornings).toFixed(1),
      row.leftAMorning.toFixed(1),
      row.busyMorningLeft.toFixed(0),
      readings === 0 ? '' : `${((100 * row.leftToPerson) / readings).toFixed(1)} %`,
      forecast(row.month),
      forecast(row.year),
    ])
  }
  return table.toString()
}

function forecast({ expected, low, high }: RulePoint['month']): string {
  return `${expected.toFixed(1)} (${low} to ${high})`
}
