/**
 * What is written down about people and sites, one dated entry after the other: offers, states, contacts, letters, surveys,
 * sittings of drills, thanks. An entry is never changed; it can be taken back, and put back. Entries go only when a person's
 * data are erased, or their time is over. What the kinds hold stands in the contract (packages/contract/src/journal.ts).
 */
export interface NewJournalEntry {
  /** Sorts by time. The same id twice is one entry. */
  id: string
  networkId: string
  /** What it is about: `candidate ID`, `gauge ID`, `person ID`, or `network`. */
  about: string
  kind: string
  atUtc: string
  /** Id of the person who wrote it, as in the trail; empty once that person is forgotten. */
  by: string
  /** JSON. */
  body: unknown
}

export interface JournalEntry extends NewJournalEntry {
  /** Who took it back, and when; null while it stands. */
  takenBack: { by: string; atUtc: string } | null
}

/** Every method rejects with a LedgerError, and then nothing has changed. What resolved is durable. */
export interface Journal {
  /** All or nothing. @returns how many were not there already. NETWORK_UNKNOWN */
  append(entries: readonly NewJournalEntry[]): Promise<number>
  /** Everything about these, those taken back too, oldest first. */
  about(networkId: string, about: readonly string[]): Promise<JournalEntry[]>
  /** Everything of these kinds, those taken back too, oldest first. */
  ofKinds(networkId: string, kinds: readonly string[]): Promise<JournalEntry[]>
  entry(networkId: string, id: string): Promise<JournalEntry | null>
  /** False where there is no such entry, or it is taken back already. */
  takeBack(networkId: string, id: string, by: string, atUtc: string): Promise<boolean>
  /** False where there is no such entry, or it stands. */
  putBack(networkId: string, id: string): Promise<boolean>
  /** Erases everything about these. @returns entries erased */
  erase(networkId: string, about: readonly string[]): Promise<number>
  /** Everything that a person wrote, for the export of what is held on them. */
  writtenBy(personId: string): Promise<JournalEntry[]>
  /** Takes a person's id out of everything they wrote, and erases everything about them as a person. */
  forgetPerson(personId: string): Promise<void>
  /** Told after every change in this process. @returns stops it */
  listen(listener: (networkId: string) => void): () => void
}
