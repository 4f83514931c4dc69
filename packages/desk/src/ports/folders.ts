/** Folders through which files and mails come in. What is taken or refused is moved aside, with a report beside it. */

/** Something that waits in a folder, whole. */
export interface Waiting {
  /** Of the file or message itself. */
  path: string
  name: string
  /** SHA-256 of what it brings, in hexadecimal: the same content has the same one, whatever its name. */
  sha256: string
  /** Files to import; for a mail, its parts as files of their own. */
  paths: readonly string[]
  /** Address that a mail says to come from, lower case; null for a file. */
  from: string | null
}

export type Outcome = 'taken' | 'refused'

export interface InFolder {
  /** In the order of their names. What is still being written is left for later. */
  waiting(): AsyncIterable<Waiting>
  /** The report is there before the file is moved: a crash in between leaves the file to be looked at again. */
  settle(waiting: Waiting, outcome: Outcome, report: string): Promise<void>
  /** Called some time after something may have come, for certain by `everyMs`. @returns how to stop it */
  watch(onChange: () => void, everyMs: number): () => Promise<void>
}

export interface Folders {
  /**
   * Files of CSV or SHEF. Made with its folders `taken` and `refused` where they are not there.
   * @param settleMs  how long a file must have stayed as it is to be whole
   */
  files(path: string, settleMs: number): Promise<InFolder>
  /** A Maildir: messages in `new`. */
  mails(path: string): Promise<InFolder>
}
