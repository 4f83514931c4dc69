/** What the desk says of habits in English. One switch over every kind; the compiler refuses one without words. */
import { type HabitAsk, type HabitWords, habitFigures, hoursOf, nearlyAll, wholeDayFrom } from './habitAsk.ts'

const weekdays = ['Mondays', 'Tuesdays', 'Wednesdays', 'Thursdays', 'Fridays', 'Saturdays', 'Sundays'] as const
const nothing = 'There is nothing to do.'

export function englishHabit(ask: HabitAsk): HabitWords {
  const { habit, stepMm } = ask
  const say = habitFigures(ask)
  const { value, low, high } = habit
  if (!habit.isHabit) return { sentence: englishUsual(ask), advice: nothing }
  switch (habit.kind) {
    case 'dated':
      return {
        sentence: `${englishDating(value)} It agrees best there on ${say.readings} days (between ${say.numbers(Math.min(Math.abs(low), Math.abs(high)), Math.max(Math.abs(low), Math.abs(high)))} days apart).`,
        advice:
          Math.abs(value) >= wholeDayFrom
            ? 'The desk allows for it, and no reading is doubted for it alone. When you are next in touch, ask under which date a morning reading is written down; one common way makes the maps sharper.'
            : 'The desk allows for it, and no reading is doubted for it alone. Ask at which hour the gauge is usually read: an hour of its own is fine once it is known.',
      }
    case 'shifting':
      return {
        sentence: `Now and then its rain is dated a day off: about ${say.number(value)} times as often as usual in the network (${say.numbers(low, high)}), from ${say.readings} readings.`,
        advice:
          'Ask how the amounts find their way from the gauge to the report. A note at the gauge each morning, with the date on it, is often all it takes.',
      }
    case 'carried':
      return {
        sentence: `Totals over several days come as those of one day about ${say.number(value)} times as often as usual (${say.numbers(low, high)})${ask.totalsEndOn === null ? '' : `, mostly on ${weekdays[ask.totalsEndOn]}`}, from ${say.readings} readings.`,
        advice:
          'Days away are quite all right. Show how to report a total with the days that it covers, and that a morning without a look is left empty rather than zero.',
      }
    case 'fives':
    case 'tens': {
      const every = habit.kind === 'fives' ? 5 : 10
      return {
        sentence: `${value > nearlyAll ? 'Nearly all' : `About ${say.percent(value)}`} of its amounts look rounded to multiples of ${say.step(every * stepMm)} (${say.percents(low, high)}), from ${say.readings} amounts; chance alone does not do that.`,
        advice: `Earlier readings are fine as they are. A friendly word may help: the scale can be read to ${say.step(stepMm)}, with the eye level with the bottom of the curved surface.`,
      }
    }
    case 'coarse':
      return {
        sentence: `It is read to steps of ${say.step(value)}; the network's gauges usually to ${say.step(habit.usual)}.`,
        advice:
          'Ask what the scale of the gauge shows. If it has finer lines, show how to read them; if it has not, all is well, and the desk knows the step.',
      }
    case 'off-steps':
      return {
        sentence: `About ${say.percent(value)} of its wet readings lie between its own steps of ${say.step(stepMm)} (${say.percents(low, high)}), from ${say.readings} readings.`,
        advice:
          'The gauge may be read between the lines, or the amount converted from another unit. Ask which scale is read, and offer to take amounts in that unit.',
      }
    case 'few-light':
      return {
        sentence: `It reports about ${say.percent(value)} as many amounts below ${say.light} as the gauges around on the same days (${say.percents(low, high)}), from ${say.readings} readings.`,
        advice:
          'Perhaps light rain seems not worth a note, or a little water has dried before the reading. Tell how welcome the smallest amounts are, a trace included.',
      }
    case 'fits-poorly':
      return {
        sentence: `It goes less well with the gauges around than its distance from them lets expect: ${say.percent(value / habit.usual)} of what is usual (${say.percents(low / habit.usual, high / habit.usual)}), from ${say.readings} days.`,
        advice:
          'Its readings are not wrong for that: a hill, trees or a roof may be the reason. Ask for a photo of the site, or look at it when you are next there.',
      }
    case 'mistaken':
      return {
        sentence: `Single slips (a decimal point, a zero without a look) come about ${say.number(value)} times as often as usual (${say.numbers(low, high)}), from ${say.readings} readings.`,
        advice:
          'Look at which slip comes most, and offer help with just that one; thank for the readings that are right, which are most of them.',
      }
  }
}

/** By how much a gauge dates apart, in one sentence. */
export function englishDating(offsetDays: number): string {
  if (Math.abs(offsetDays) < wholeDayFrom) {
    const side = offsetDays > 0 ? 'later' : 'earlier'
    return `The day of this gauge usually ends about ${hoursOf(offsetDays)} hours ${side} than the network's.`
  }
  return offsetDays < 0
    ? "This gauge usually reports the day before's rain."
    : "This gauge usually reports the next day's rain: it dates a reading by the morning on which its day began."
}

function englishUsual(ask: HabitAsk): string {
  const say = habitFigures(ask)
  switch (ask.habit.kind) {
    case 'dated':
      return 'Its dates go with those of the gauges around, as far as can be told.'
    case 'shifting':
      return 'Its rain is not dated a day off more often than elsewhere.'
    case 'carried':
      return 'Totals over several days come as those of one day no more often than elsewhere.'
    case 'fives':
    case 'tens':
      return `Its amounts are not rounded to multiples of ${say.step((ask.habit.kind === 'fives' ? 5 : 10) * ask.stepMm)} beyond chance.`
    case 'coarse':
      return `It is read to steps of ${say.step(ask.habit.value)}, as finely as others.`
    case 'off-steps':
      return `Its readings lie on its own steps of ${say.step(ask.stepMm)}.`
    case 'few-light':
      return `It reports amounts below ${say.light} about as the gauges around do.`
    case 'fits-poorly':
      return 'It goes with the gauges around as its distance from them lets expect.'
    case 'mistaken':
      return 'Single slips come no more often than elsewhere.'
  }
}

/** One line beside a reading: what its odds already allow for. */
export function englishAllowedFor(offsetDays: number, takenAsHabit: number): string | null {
  if (offsetDays !== 0) return `${englishDating(offsetDays)} Its readings are judged by the days they stand for.`
  if (takenAsHabit < 0.5) return null
  return `Of what looks dated a day off or carried over days here, ${Math.round(100 * takenAsHabit)}\u00a0% is taken for this gauge's way and not doubted.`
}
