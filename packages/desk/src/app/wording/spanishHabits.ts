/** What the desk says of habits in Spanish. One switch over every kind; the compiler refuses one without words. */
import { type HabitAsk, type HabitWords, habitFigures, hoursOf, nearlyAll, wholeDayFrom } from './habitAsk.ts'

const weekdays = ['lunes', 'martes', 'miércoles', 'jueves', 'viernes', 'sábados', 'domingos'] as const
const nothing = 'No hay nada que hacer.'

export function spanishHabit(ask: HabitAsk): HabitWords {
  const { habit, stepMm } = ask
  const say = habitFigures(ask)
  const { value, low, high } = habit
  if (!habit.isHabit) return { sentence: spanishUsual(ask), advice: nothing }
  switch (habit.kind) {
    case 'dated':
      return {
        sentence: `${spanishDating(value)} Ahí es donde mejor concuerda en ${say.readings} días (entre ${say.numbers(Math.min(Math.abs(low), Math.abs(high)), Math.max(Math.abs(low), Math.abs(high)))} días de diferencia).`,
        advice:
          Math.abs(value) >= wholeDayFrom
            ? 'El escritorio ya lo tiene en cuenta y ninguna lectura se pone en duda solo por eso. Cuando vuelva a tener contacto, pregunte con qué fecha se anota la lectura de la mañana; una costumbre común hace los mapas más nítidos.'
            : 'El escritorio ya lo tiene en cuenta y ninguna lectura se pone en duda solo por eso. Pregunte a qué hora se suele leer el pluviómetro: una hora propia está bien en cuanto se conoce.',
      }
    case 'shifting':
      return {
        sentence: `De vez en cuando su lluvia lleva la fecha de otro día: unas ${say.number(value)} veces lo habitual en la red (de ${say.numbers(low, high)}), en ${say.readings} lecturas.`,
        advice:
          'Pregunte cómo llegan las cantidades del pluviómetro al parte. Muchas veces basta una nota con la fecha cada mañana junto al pluviómetro.',
      }
    case 'carried':
      return {
        sentence: `Los totales de varios días llegan como de uno solo unas ${say.number(value)} veces lo habitual (de ${say.numbers(low, high)})${ask.totalsEndOn === null ? '' : `, sobre todo los ${weekdays[ask.totalsEndOn]}`}, en ${say.readings} lecturas.`,
        advice:
          'Ausentarse unos días no es ningún problema. Enseñe cómo dar un total con los días que abarca, y que una mañana sin mirar se deja vacía en lugar de cero.',
      }
    case 'fives':
    case 'tens': {
      const every = habit.kind === 'fives' ? 5 : 10
      return {
        sentence: `${value > nearlyAll ? 'Casi todas' : `Cerca del ${say.percent(value)} de`} sus cantidades parecen redondeadas a múltiplos de ${say.step(every * stepMm)} (del ${say.percents(low, high)}), en ${say.readings} cantidades; el azar solo no lo explica.`,
        advice: `Las lecturas anteriores están bien como están. Puede ayudar una palabra amable: la escala permite leer ${say.step(stepMm)}, con el ojo a la altura del fondo de la curva del agua.`,
      }
    }
    case 'coarse':
      return {
        sentence: `Se lee en pasos de ${say.step(value)}; los pluviómetros de la red, por lo común, en pasos de ${say.step(habit.usual)}.`,
        advice:
          'Pregunte qué muestra la escala del pluviómetro. Si tiene líneas más finas, enseñe a leerlas; si no las tiene, todo está bien, y el escritorio conoce el paso.',
      }
    case 'off-steps':
      return {
        sentence: `El ${say.percent(value)} de sus lecturas con lluvia caen entre sus propios pasos de ${say.step(stepMm)} (del ${say.percents(low, high)}), en ${say.readings} lecturas.`,
        advice:
          'Quizá se lee entre líneas, o la cantidad se convierte de otra unidad. Pregunte qué escala se lee y ofrezca recibir las cantidades en esa unidad.',
      }
    case 'few-light':
      return {
        sentence: `Anota cerca del ${say.percent(value)} de las cantidades menores de ${say.light} que anotan los pluviómetros de alrededor los mismos días (del ${say.percents(low, high)}), en ${say.readings} lecturas.`,
        advice:
          'Tal vez la lluvia débil parece no merecer una nota, o un poco de agua se seca antes de la lectura. Cuente cuánto se agradecen las cantidades más pequeñas, también una traza.',
      }
    case 'fits-poorly':
      return {
        sentence: `Concuerda con los pluviómetros de alrededor menos de lo que su distancia hace esperar: el ${say.percent(value / habit.usual)} de lo habitual (del ${say.percents(low / habit.usual, high / habit.usual)}), en ${say.readings} días.`,
        advice:
          'No por eso sus lecturas son malas: una loma, árboles o un tejado pueden ser el motivo. Pida una foto del lugar o mírelo cuando pase por allí.',
      }
    case 'mistaken':
      return {
        sentence: `Los deslices sueltos (una coma decimal, un cero sin mirar) llegan unas ${say.number(value)} veces lo habitual (de ${say.numbers(low, high)}), en ${say.readings} lecturas.`,
        advice:
          'Mire qué desliz se repite más y ofrezca ayuda con ese solo; dé las gracias por las lecturas acertadas, que son casi todas.',
      }
  }
}

/** By how much a gauge dates apart, in one sentence. */
export function spanishDating(offsetDays: number): string {
  if (Math.abs(offsetDays) < wholeDayFrom) {
    const side = offsetDays > 0 ? 'después' : 'antes'
    return `El día de este pluviómetro suele acabar unas ${hoursOf(offsetDays)} horas ${side} que el de la red.`
  }
  return offsetDays < 0
    ? 'Este pluviómetro suele anotar la lluvia del día anterior.'
    : 'Este pluviómetro suele anotar la lluvia del día siguiente: fecha la lectura con la mañana en que empezó su día.'
}

function spanishUsual(ask: HabitAsk): string {
  const say = habitFigures(ask)
  switch (ask.habit.kind) {
    case 'dated':
      return 'Sus fechas van con las de los pluviómetros de alrededor, hasta donde se puede saber.'
    case 'shifting':
      return 'Su lluvia no lleva la fecha de otro día más a menudo que en otros lugares.'
    case 'carried':
      return 'Los totales de varios días no llegan como de uno solo más a menudo que en otros lugares.'
    case 'fives':
    case 'tens':
      return `Sus cantidades no se redondean a múltiplos de ${say.step((ask.habit.kind === 'fives' ? 5 : 10) * ask.stepMm)} más allá del azar.`
    case 'coarse':
      return `Se lee en pasos de ${say.step(ask.habit.value)}, con tanta finura como otros.`
    case 'off-steps':
      return `Sus lecturas caen en sus propios pasos de ${say.step(ask.stepMm)}.`
    case 'few-light':
      return `Anota cantidades menores de ${say.light} más o menos como los pluviómetros de alrededor.`
    case 'fits-poorly':
      return 'Concuerda con los pluviómetros de alrededor como su distancia hace esperar.'
    case 'mistaken':
      return 'Los deslices sueltos no llegan más a menudo que en otros lugares.'
  }
}

/** One line beside a reading: what its odds already allow for. */
export function spanishAllowedFor(offsetDays: number, takenAsHabit: number): string | null {
  if (offsetDays !== 0) return `${spanishDating(offsetDays)} Sus lecturas se valoran por los días que les corresponden.`
  if (takenAsHabit < 0.5) return null
  return `De lo que aquí parece llevar la fecha de otro día o ser un total de varios días, el ${Math.round(100 * takenAsHabit)}\u00a0% se toma por costumbre de este pluviómetro y no se pone en duda.`
}
