/** The kind note to somebody who has not read yet, as mail and as a text message, in the person's language. */
export interface NoteAsk {
  name: string
  network: string
  /** ISO date of the observing day. */
  day: string
  readingTime: string
  gauges: readonly { code: string; name: string }[]
  myGaugeUrl: string
  stopUrl: string
}

export function reminderMail(language: 'en' | 'es', ask: NoteAsk): { subject: string; text: string } {
  return language === 'es' ? spanishMail(ask) : englishMail(ask)
}

export function reminderText(language: 'en' | 'es', ask: NoteAsk): string {
  const { network, myGaugeUrl, stopUrl } = ask
  if (language === 'es') {
    return `${network}: hoy aún no ha llegado su lectura. Un cero también cuenta. ${myGaugeUrl} No más avisos: ${stopUrl}`
  }
  return `${network}: your reading has not come today. A zero counts too. ${myGaugeUrl} No more notes: ${stopUrl}`
}

function englishMail(ask: NoteAsk): { subject: string; text: string } {
  const { name, network, day, readingTime, gauges, myGaugeUrl, stopUrl } = ask
  const date = dateIn('en', day)
  return {
    subject: `Your reading for ${date}: ${network}`,
    text: [
      `Good morning ${name},`,
      `no reading has come yet for the day that ended on ${date} at ${readingTime}, from ${listed(gauges, 'and')}.`,
      `If you have looked, please tell us what you found; a zero is a reading too:\n${myGaugeUrl}`,
      'If nobody could look, that is all right: tomorrow’s reading can be a total over both days. Please do not go out to the gauge in thunder, hail or high water.',
      'If you sent it a moment ago, thank you; our messages have crossed.',
      `One tap, and you get no more of these notes:\n${stopUrl}`,
    ].join('\n\n'),
  }
}

function spanishMail(ask: NoteAsk): { subject: string; text: string } {
  const { name, network, day, readingTime, gauges, myGaugeUrl, stopUrl } = ask
  const date = dateIn('es', day)
  return {
    subject: `Su lectura del ${date}: ${network}`,
    text: [
      `Hola, ${name}:`,
      `aún no ha llegado la lectura del día que terminó el ${date} a las ${readingTime}, de ${listed(gauges, 'y')}.`,
      `Si ya miró, díganos qué encontró; un cero también es una lectura:\n${myGaugeUrl}`,
      'Si nadie pudo mirar, no pasa nada: la lectura de mañana puede ser el total de los dos días. No salga al pluviómetro si truena, graniza o hay crecida.',
      'Si acaba de enviarla, gracias; nuestros mensajes se han cruzado.',
      `Un toque, y no recibirá más avisos como este:\n${stopUrl}`,
    ].join('\n\n'),
  }
}

function listed(gauges: NoteAsk['gauges'], and: string): string {
  const names = gauges.map(({ code, name }) => (name === '' ? code : `${name} (${code})`))
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${and} ${names.at(-1)}`
}

/** `31 May`, `31 de mayo`. */
function dateIn(language: 'en' | 'es', day: string): string {
  const locale = language === 'es' ? 'es' : 'en-GB'
  return new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', timeZone: 'UTC' }).format(Date.parse(day))
}
