/**
 * Deliveries that came in by machine or by folder, each once. A delivery is kept in the same step as its readings, so that
 * after a crash it is there with them or not at all.
 */

export interface Delivery {
  /** What makes another one the same: `file <sha256>`, or `call <key id> <idempotency key>`. At most 300 characters. */
  key: string
  /** SHA-256 of what was sent, in hexadecimal. */
  bodyHash: string
  /** Whoever sent it: id of a sender's key, `folder`, or a mail address. */
  sender: string
  /** Of the file, the message or the call. */
  name: string
  receivedAtUtc: string
  /** What was answered, as text, to be answered again. */
  answer: string
}
