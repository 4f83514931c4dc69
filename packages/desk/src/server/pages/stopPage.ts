/** The page behind the link in a note: one sentence and one button, in the person's language, without any script. */
import type { StoppedReminders } from '../../app/stopReminders.ts'

const words = {
  en: {
    getting: (network: string) => `You get a note from ${network} when no reading has come.`,
    stop: 'No more notes',
    stopped: (network: string) => `You get no more notes from ${network}. Thank you for reading the gauge.`,
    start: 'Send me notes again',
    broken: 'This link is not whole. Open it again from the note, or tell your network that you want no more notes.',
    title: 'Notes',
  },
  es: {
    getting: (network: string) => `${network} le avisa cuando no ha llegado la lectura.`,
    stop: 'No más avisos',
    stopped: (network: string) => `Ya no recibirá avisos de ${network}. Gracias por leer el pluviómetro.`,
    start: 'Quiero avisos otra vez',
    broken: 'Este enlace no está entero. Ábralo otra vez desde el aviso, o diga a su red que no quiere más avisos.',
    title: 'Avisos',
  },
}

/** @param state  null where the link is not one of ours: then both languages are shown */
export function stopPage(
  state: StoppedReminders | null,
  { token, stylePath }: { token: string; stylePath: string },
): string {
  if (state === null) {
    const both = `<p>${words.en.broken}</p><p lang="es">${words.es.broken}</p>`
    return page('en', words.en.title, stylePath, both)
  }
  const own = words[state.language]
  const says = state.wants ? own.getting : own.stopped
  const act = state.wants ? 'stop' : 'start'
  const form = `<form method="post" action="/reminders/${act}/${escaped(token)}"><button>${own[act]}</button></form>`
  return page(state.language, own.title, stylePath, `<p role="status">${escaped(says(state.network))}</p>${form}`)
}

function page(language: string, title: string, stylePath: string, main: string): string {
  return `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${title}</title>
<link rel="stylesheet" href="${stylePath}">
</head>
<body><main>${main}</main></body>
</html>
`
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`)
}

export const stopPageStyle = `:root { color-scheme: light dark; }
body { margin: 0; font: 1.375rem/1.5 system-ui, sans-serif; }
main { max-width: 34rem; margin: 0 auto; padding: 2rem 1.25rem; }
button { font: inherit; width: 100%; min-height: 3.5rem; padding: 0.5rem 1.25rem; }
`
