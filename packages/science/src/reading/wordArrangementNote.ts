/** The words for every note on how a gauge's readings lie over its days, in one place. */
import { formatAmount, type Language } from '../units/formatAmount.ts'
import type { ArrangementNote } from './arrangement.ts'
import type { IsoDay, Unit } from './reading.ts'

/** One sentence, with ISO days and amounts in `unit`. */
export function wordArrangementNote(note: ArrangementNote, unit: Unit, language: Language = 'en'): string {
  const amount = (amountUm: number) => formatAmount({ amountUm, isTrace: false }, unit, language, 'full')
  return language === 'es' ? spanish(note, amount) : english(note, amount)
}

function english(note: ArrangementNote, amount: (amountUm: number) => string): string {
  const days = span(note.firstDay, note.lastDay, 'to')
  switch (note.code) {
    case 'TOTAL_OVER_DAYS':
      return `One amount for the ${note.dayCount} days ${days}; what fell on each is not known.`
    case 'READING_REPEATED':
      return `The same reading for ${days} came ${note.readingIds.length} times. It counts once.`
    case 'READINGS_DISAGREE':
      return `${note.readingIds.length} readings for ${days} disagree: ${amount(note.lowestUm)} and ${amount(note.highestUm)}. Choose one.`
    case 'TOTAL_REPEATS_DAYS':
      return `The total for ${days} repeats its single readings. The single readings count.`
    case 'TOTAL_HOLDS_READINGS':
      return note.restDayCount === 0
        ? `The total for ${days} is ${amount(note.restUm)} more than its single readings.`
        : `The total for ${days} also holds days that were read singly; ${amount(note.restUm)} would be left for the other ${note.restDayCount}. Say which days it covers.`
    case 'TOTAL_BELOW_READINGS':
      return `The total for ${days} is ${amount(note.shortUm)} less than the readings inside it.`
    case 'TOTALS_CROSS':
      return `Two totals both cover ${days}. Say where the first ended.`
    case 'DAYS_SILENT':
      return note.nextReadingId === null
        ? `No reading for ${days}.`
        : `No reading for ${days}. The reading of ${note.nextDay} may hold that water too.`
    case 'INTERVALS_OVERLAP':
      return `The readings of ${note.firstDay} and ${note.lastDay} share ${note.minutes} minutes.`
    case 'INTERVALS_LEAVE_GAP':
      return `Between the readings of ${note.firstDay} and ${note.lastDay}, ${note.minutes} minutes belong to neither.`
  }
}

function spanish(note: ArrangementNote, amount: (amountUm: number) => string): string {
  const days = span(note.firstDay, note.lastDay, 'a')
  switch (note.code) {
    case 'TOTAL_OVER_DAYS':
      return `Una sola cantidad para los ${note.dayCount} días ${days}; no se sabe cuánto cayó en cada uno.`
    case 'READING_REPEATED':
      return `La misma lectura de ${days} llegó ${note.readingIds.length} veces. Cuenta una vez.`
    case 'READINGS_DISAGREE':
      return `${note.readingIds.length} lecturas de ${days} no coinciden: ${amount(note.lowestUm)} y ${amount(note.highestUm)}. Elija una.`
    case 'TOTAL_REPEATS_DAYS':
      return `El total de ${days} repite sus lecturas diarias. Cuentan las diarias.`
    case 'TOTAL_HOLDS_READINGS':
      return note.restDayCount === 0
        ? `El total de ${days} supera en ${amount(note.restUm)} a sus lecturas diarias.`
        : `El total de ${days} incluye días leídos por separado; quedarían ${amount(note.restUm)} para los otros ${note.restDayCount}. Indique qué días abarca.`
    case 'TOTAL_BELOW_READINGS':
      return `El total de ${days} es ${amount(note.shortUm)} menor que las lecturas que contiene.`
    case 'TOTALS_CROSS':
      return `Dos totales abarcan ${days}. Indique dónde terminó el primero.`
    case 'DAYS_SILENT':
      return note.nextReadingId === null
        ? `Sin lectura de ${days}.`
        : `Sin lectura de ${days}. La lectura de ${note.nextDay} puede incluir también esa agua.`
    case 'INTERVALS_OVERLAP':
      return `Las lecturas de ${note.firstDay} y ${note.lastDay} comparten ${note.minutes} minutos.`
    case 'INTERVALS_LEAVE_GAP':
      return `Entre las lecturas de ${note.firstDay} y ${note.lastDay} hay ${note.minutes} minutos sin asignar.`
  }
}

function span(firstDay: IsoDay, lastDay: IsoDay, to: string): string {
  return firstDay === lastDay ? firstDay : `${firstDay} ${to} ${lastDay}`
}
