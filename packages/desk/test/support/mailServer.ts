/** A real SMTP server on loopback for tests, which can be told to misbehave at each stage. */
import type { AddressInfo, Socket } from 'node:net'
import { type ParsedMail, simpleParser } from 'mailparser'
import { SMTPServer } from 'smtp-server'

export interface Received {
  to: string[]
  raw: string
  mail: ParsedMail
}

export type Trouble =
  | 'none'
  /** Takes the message whole, and closes the connection instead of answering. */
  | 'drop after data'
  /** Closes the connection while the message comes in. */
  | 'drop within data'
  | 'refuse recipient'
  | 'try later'
  | 'refuse message'

export interface MailServer {
  port: number
  received: Received[]
  trouble: Trouble
  connections: number
  close: () => Promise<void>
}

export async function openMailServer(options: { user?: string; password?: string } = {}): Promise<MailServer> {
  const sockets = new Set<Socket>()
  const received: Received[] = []
  const state: MailServer = { port: 0, received, trouble: 'none', connections: 0, close: async () => undefined }
  const refusal = (text: string, responseCode: number): Error => Object.assign(new Error(text), { responseCode })
  const server = new SMTPServer({
    disabledCommands: options.user === undefined ? ['AUTH', 'STARTTLS'] : ['STARTTLS'],
    allowInsecureAuth: true,
    logger: false,
    onAuth: ({ username, password }, _session, callback) => {
      if (username === options.user && password === options.password) callback(null, { user: username })
      else callback(refusal('5.7.8 wrong password', 535))
    },
    onConnect: (_session, callback) => {
      state.connections++
      callback()
    },
    onRcptTo: (_address, _session, callback) => {
      if (state.trouble === 'refuse recipient') callback(refusal('5.1.1 no such mailbox', 550))
      else if (state.trouble === 'try later') callback(refusal('4.2.0 greylisted', 451))
      else callback()
    },
    onData: (stream, session, callback) => {
      const parts: Buffer[] = []
      const dropAll = (): void => {
        for (const socket of sockets) socket.destroy()
      }
      stream.on('data', (part: Buffer) => {
        if (state.trouble === 'drop within data') dropAll()
        else parts.push(part)
      })
      stream.on('end', () => {
        if (state.trouble === 'drop within data') return
        if (state.trouble === 'refuse message') return callback(refusal('5.7.1 not wanted', 554))
        const raw = Buffer.concat(parts)
        void simpleParser(raw).then((mail) => {
          received.push({ to: session.envelope.rcptTo.map(({ address }) => address), raw: raw.toString('utf8'), mail })
          if (state.trouble === 'drop after data') return dropAll()
          callback(null, 'taken')
        })
      })
    },
  })
  server.on('error', () => undefined)
  server.server.on('connection', (socket: Socket) => {
    sockets.add(socket)
    socket.on('close', () => sockets.delete(socket))
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  state.port = (server.server.address() as AddressInfo).port
  state.close = () =>
    new Promise((done) => {
      for (const socket of sockets) socket.destroy()
      server.close(() => done())
    })
  return state
}
