/** What an SMTP failure says about the message: certainly not taken now, certainly never, or not known. */
import type { Carried } from '../ports/carriers.ts'

/** As nodemailer reports it. */
export interface SmtpTrouble extends Error {
  code?: string
  /** The server's own answer, where there was one. */
  responseCode?: number
  response?: string
}

const LONGEST = 300

/** @param mayBeTaken  whether the server was given the line that ends the message */
export function explainSmtp(error: SmtpTrouble, mayBeTaken: boolean): Carried {
  const text = (error.response ?? error.message).replace(/\s+/g, ' ').slice(0, LONGEST)
  const { responseCode } = error
  if (responseCode === undefined || responseCode === 0) {
    return mayBeTaken ? { kind: 'in doubt', error: text } : { kind: 'again', error: text }
  }
  // The server refused: RFC 5321, 4.2.1. A refusal of the sender's name or of the whole session is not about this message.
  const isAboutMessage = error.code === 'EENVELOPE' || error.code === 'EMESSAGE'
  if (responseCode >= 500 && isAboutMessage) return { kind: 'failed', error: text }
  return { kind: 'again', error: text }
}
