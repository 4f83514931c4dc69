/** Habits in the terminal, in the network's language. Pure. */
import type { GaugeHabitsAnswer, NetworkHabitsAnswer, WireHabit } from '@gaugewright/contract'

const NARROWEST = 60

/** @param columns  width of the terminal */
export function printNetworkHabits(answer: NetworkHabitsAnswer, columns: number): string {
  const withHabits = answer.gauges.filter(({ habits }) => habits.length > 0)
  const lines = [
    `${answer.network.name}, ${answer.firstDay} to ${answer.lastDay}: ${withHabits.length} of ${answer.gauges.length} gauges with a habit`,
  ]
  for (const { code, name, habits } of withHabits) {
    lines.push('', `${code} ${name}`)
    for (const habit of habits) lines.push(...habitLines(habit, columns, false))
  }
  return lines.join('\n')
}

export function printGaugeHabits(answer: GaugeHabitsAnswer, columns: number): string {
  const { code, name, firstDay, lastDay, readings, decided } = answer
  const lines = [`${code} ${name}, ${firstDay} to ${lastDay}, ${readings} daily readings`]
  if (decided !== null) {
    const all = decided.mistaken + decided.standing
    lines.push(
      `Of ${all} of its readings that a person decided about in the last year, ${decided.mistaken} were mistaken.`,
    )
  }
  for (const habit of answer.habits) lines.push('', ...habitLines(habit, columns, habit.isHabit))
  return lines.join('\n')
}

function habitLines(habit: WireHabit, columns: number, withAdvice: boolean): string[] {
  const mark = habit.isHabit ? `${(habit.sure * 100).toFixed(0).padStart(3)} %` : '     '
  const lines = wrap(habit.sentence, columns, `${mark}  ${habit.kind.padEnd(12)} `)
  return withAdvice ? [...lines, ...wrap(habit.advice, columns, ' '.repeat(20))] : lines
}

/** Words on lines of the terminal's width; the first begins with `start`, the others stand under its text. */
function wrap(text: string, columns: number, start: string): string[] {
  const width = Math.max(NARROWEST, columns)
  const lines: string[] = []
  let line = start
  for (const word of text.split(' ')) {
    if (line.length + word.length + 1 > width && line.trim() !== '') {
      lines.push(line.trimEnd())
      line = ' '.repeat(start.length)
    }
    line += `${word} `
  }
  return [...lines, line.trimEnd()]
}
