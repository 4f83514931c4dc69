/** What is said on an occasion, in the observer's language. */
import type { Occasion } from '@gaugewright/science'

type Told = Occasion extends infer One ? (One extends { key: string } ? Omit<One, 'key' | 'day'> : never) : never

export function occasionText(language: 'en' | 'es', told: Told, gauge: string): string {
  const es = language === 'es'
  switch (told.kind) {
    case 'first reading':
      return es
        ? `Ha llegado la primera lectura de ${gauge}. Nos alegra mucho.`
        : `The first reading of ${gauge} has arrived. We are glad of it.`
    case 'readings':
      return es ? `Ya son ${told.count} lecturas de ${gauge}.` : `${gauge} has sent ${told.count} readings by now.`
    case 'years':
      return es
        ? `Hace ${told.years === 1 ? 'un año' : `${told.years} años`} que lee ${gauge}.`
        : `You have read ${gauge} for ${told.years === 1 ? 'a year' : `${told.years} years`} now.`
    case 'whole dry month':
      return es
        ? `Un mes seco, y ${gauge} respondió cada mañana: sin esos ceros no sabríamos que fue seco.`
        : `A dry month, and ${gauge} answered every morning: without these zeros nobody would know that it was dry.`
    case 'storm': {
      const share = `${Math.round(told.sharpenedShare * 100)} %`
      return es
        ? `Tras la tormenta, su lectura en ${gauge} quitó el ${share} de la duda del mapa a su alrededor.`
        : `After the storm, your reading at ${gauge} took ${share} of the doubt out of the map around you.`
    }
  }
}

export function quietText(language: 'en' | 'es', name: string, gauge: string): string {
  return language === 'es'
    ? `Hola, ${name}: su pluviómetro ${gauge} está más callado que de costumbre, y esperamos que todo vaya bien. ¿Podemos ayudar en algo? Y si prefiere dejarlo, también está bien.`
    : `Hello ${name}, your gauge ${gauge} has been quieter than it used to be, and we hope that all is well. Is there something we can help with? And if you would rather stop, that is all right too.`
}
