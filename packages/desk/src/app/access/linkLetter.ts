/** The letter with a sign-in link, in the person's language. */
export interface LinkLetterAsk {
  name: string
  network: string
  url: string
  minutes: number
}

export function linkLetter(language: 'en' | 'es', ask: LinkLetterAsk): { subject: string; text: string } {
  const { name, network, url, minutes } = ask
  if (language === 'es') {
    return {
      subject: `Su enlace para entrar: ${network}`,
      text: [
        `Hola, ${name}:`,
        `Abra este enlace en el mismo navegador en el que lo pidió. Sirve una sola vez, durante ${minutes} minutos:`,
        url,
        'Si no lo pidió, no haga nada: sin el navegador que lo pidió no sirve.',
      ].join('\n\n'),
    }
  }
  return {
    subject: `Your link to sign in: ${network}`,
    text: [
      `Hello ${name},`,
      `Open this link in the browser in which you asked for it. It works once, for ${minutes} minutes:`,
      url,
      'If you did not ask for it, do nothing: without the browser that asked it opens nothing.',
    ].join('\n\n'),
  }
}
