/**
 * Mail by SMTP (RFC 5321), one message a connection. The server can take a message only when it has the line that ends it;
 * `beforeTaken` is awaited just before that line, so that whatever fails earlier is certainly not taken, and only what fails
 * between that line and the server's answer is in doubt.
 */
import { Readable } from 'node:stream'
import type { MailSettings } from '@gaugewright/contract'
import MailComposer from 'nodemailer/lib/mail-composer'
import SMTPConnection from 'nodemailer/lib/smtp-connection'
import type { Carried, CarryAsk } from '../ports/carriers.ts'
import type { MailContent } from '../ports/outbox.ts'
import { explainSmtp, type SmtpTrouble } from './explainSmtp.ts'

const CONNECT_MS = 20_000
/** How long a server may think about a message: RFC 5321, 4.5.3.2.6, since giving up early makes doubt. */
const SILENCE_MS = 600_000
const PIECE_BYTES = 16_384

export async function carryMail(
  content: MailContent,
  settings: MailSettings & { password: string | null },
  ask: CarryAsk,
): Promise<Carried> {
  const bytes = await composeMail(content, settings, ask)
  const connection = new SMTPConnection({
    host: settings.host,
    port: settings.port,
    secure: settings.security === 'tls',
    requireTLS: settings.security === 'starttls',
    ignoreTLS: settings.security === 'none',
    name: domainOf(settings.from),
    connectionTimeout: CONNECT_MS,
    greetingTimeout: CONNECT_MS,
    socketTimeout: SILENCE_MS,
    socketCloseTimeout: 1000,
  })
  const progress = { mayBeTaken: false, isStopped: false }
  try {
    return await new Promise<Carried>((done) => {
      const trouble = (error: SmtpTrouble): void => {
        done(progress.isStopped ? { kind: 'stopped' } : explainSmtp(error, progress.mayBeTaken))
      }
      ask.signal?.addEventListener('abort', () => trouble(new Error('the desk closed before the server answered')))
      connection.once('error', trouble)
      connection.once('end', () => trouble(new Error('the server closed the connection')))
      const send = (): void => {
        const body = Readable.from(untilLastLine(bytes, ask, progress))
        connection.send({ from: settings.from, to: [content.to] }, body, (error, info) => {
          if (error) trouble(error)
          else done({ kind: 'sent', receipt: String(info?.response ?? '') })
        })
      }
      connection.connect((error) => {
        if (error) return trouble(error)
        if (settings.user === null) return send()
        const credentials = { user: settings.user, pass: settings.password ?? '' }
        connection.login({ credentials }, (refused) => (refused ? trouble(refused) : send()))
      })
    })
  } finally {
    // Destroys the socket: the line that ends a message is never sent after this.
    connection.close()
  }
}

/**
 * All of the message; its stream ends, and with it the message, only when the outbox has written down that it may. Asked for
 * one piece ahead of what the connection took, so that the doubt about a message begins with its last pieces.
 */
async function* untilLastLine(
  bytes: Buffer,
  { beforeTaken }: CarryAsk,
  progress: { mayBeTaken: boolean; isStopped: boolean },
): AsyncGenerator<Buffer> {
  for (let from = 0; from < bytes.length; from += PIECE_BYTES) yield bytes.subarray(from, from + PIECE_BYTES)
  if (!(await beforeTaken())) {
    progress.isStopped = true
    throw new Error('stopped before the end')
  }
  progress.mayBeTaken = true
}

/** The same bytes at every attempt: Message-ID and Date come from the message itself. */
export async function composeMail(
  content: MailContent,
  settings: Pick<MailSettings, 'from' | 'fromName'>,
  ask: Pick<CarryAsk, 'messageId' | 'queuedAtUtc'>,
): Promise<Buffer> {
  const composer = new MailComposer({
    from: { name: settings.fromName, address: settings.from },
    to: content.to,
    subject: content.subject,
    text: content.text,
    messageId: `<${ask.messageId}@${domainOf(settings.from)}>`,
    date: new Date(ask.queuedAtUtc),
    headers: { 'Auto-Submitted': 'auto-generated', ...content.headers },
    attachments: (content.attachments ?? []).map(({ name, mediaType, base64 }) => ({
      filename: name,
      contentType: mediaType,
      content: base64,
      encoding: 'base64',
    })),
  })
  return await composer.compile().build()
}

function domainOf(address: string): string {
  return address.slice(address.lastIndexOf('@') + 1)
}
