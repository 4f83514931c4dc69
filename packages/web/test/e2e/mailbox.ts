/** A mail server on this computer that takes every mail, and finds the links to sign in among them. */
import type { AddressInfo } from 'node:net'
import { simpleParser } from 'mailparser'
import { SMTPServer } from 'smtp-server'

export interface Mailbox {
  port: number
  /** The next link to sign in that is mailed to this address and was not taken before. @throws {Error} after 60 s */
  nextLink: (address: string) => Promise<string>
  close: () => Promise<void>
}

export async function openMailbox(): Promise<Mailbox> {
  const letters: { to: string[]; text: string }[] = []
  const server = new SMTPServer({
    disabledCommands: ['AUTH', 'STARTTLS'],
    logger: false,
    onData: (stream, { envelope }, taken) => {
      simpleParser(stream).then(
        ({ text }) => {
          letters.push({ to: envelope.rcptTo.map(({ address }) => address), text: text ?? '' })
          taken(null, 'taken')
        },
        (error: Error) => taken(error),
      )
    },
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  return {
    port: (server.server.address() as AddressInfo).port,
    async nextLink(address) {
      const until = Date.now() + 60_000
      while (Date.now() < until) {
        const at = letters.findIndex(({ to, text }) => to.includes(address) && text.includes('#link='))
        const link = at < 0 ? undefined : /http\S+#link=\S+/.exec(letters.splice(at, 1)[0]?.text ?? '')?.[0]
        if (link !== undefined) return link
        await new Promise((resolve) => setTimeout(resolve, 100))
      }
      throw new Error(`no link was mailed to ${address}; ${letters.length} other letters came`)
    },
    close: () => new Promise((done) => server.close(() => done())),
  }
}
