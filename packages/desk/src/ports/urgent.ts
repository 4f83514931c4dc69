/**
 * Urgent reports and everything that happened to them: one list of events a network, numbered from 1 without a gap, only
 * ever added to. Every adapter passes the same promises (store/urgentPromises.ts).
 */
import type { FileUrgentAsk, PassOnForm, PassOnWay, UrgentSettings } from '@gaugewright/contract'

interface Happened {
  /** Of the event. A filing has the id that its sender made. */
  id: string
  /** Id of the first filing: what is told later about the same thing belongs to it. */
  reportId: string
  atUtc: string
  /** Name of who did it, `rule` where nobody had to; empty once the person is forgotten. */
  by: string
  /** Id of the person where it is known: their name goes when they are forgotten. */
  byPersonId: string | null
}

export type NewUrgentEvent = Happened &
  (
    | { what: 'seen' }
    | {
        what: 'passed on'
        form: PassOnForm
        way: PassOnWay
        to: string | null
        text: string
        /** Of the message in the outbox; null for what was copied. */
        outgoingId: string | null
      }
    | { what: 'closed'; why: string }
    /** Takes back the event with this id. */
    | { what: 'undone'; target: string }
  )

export type NewFiling = Happened & { what: 'filed'; report: FileUrgentAsk }

export type UrgentEvent = (NewFiling | NewUrgentEvent) & { number: number }

export interface UrgentSettingsSet {
  settings: UrgentSettings
  by: string
  atUtc: string
}

/** Every method rejects with a LedgerError, and then nothing has changed. What resolved is durable. */
export interface Urgent {
  /**
   * The same filing again (id and content) is there already: it answers with the event that is kept.
   * @throws {LedgerError} URGENT_ID_TAKEN where another content has the id; NETWORK_UNKNOWN
   */
  file(networkId: string, filing: NewFiling): Promise<{ event: UrgentEvent; already: boolean }>
  /** @throws {LedgerError} URGENT_UNKNOWN where there is no such report; ID_TAKEN; NETWORK_UNKNOWN */
  append(networkId: string, event: NewUrgentEvent): Promise<UrgentEvent>
  /** Oldest first, those with a number above `after`, at most `limit`. */
  eventsAfter(networkId: string, after: number, limit: number): Promise<UrgentEvent[]>
  /** One event by its id; null where there is none. */
  event(networkId: string, id: string): Promise<UrgentEvent | null>
  /** All events of one report, oldest first; none where it is unknown. */
  eventsOf(networkId: string, reportId: string): Promise<UrgentEvent[]>
  /**
   * All events of each report of which something was filed at or after the instant, and of each about which nobody has done
   * anything yet (or all was undone), however old. Oldest first.
   */
  eventsSince(networkId: string, sinceUtc: string): Promise<UrgentEvent[]>
  /** Number of the newest event; 0 before the first. */
  lastNumber(networkId: string): Promise<number>
  /** Every setting there was, oldest first; the last is in force. */
  settings(networkId: string): Promise<UrgentSettingsSet[]>
  appendSettings(networkId: string, set: UrgentSettingsSet): Promise<void>
  /** Called after each event that this process stored. Others' are found by `lastNumber`. @returns how to stop it */
  listen(listener: (networkId: string, event: UrgentEvent) => void): () => void
  /** The person's name leaves every event. @returns events changed */
  forgetPerson(personId: string): Promise<number>
  /** Every event by this person, oldest first: for the export of what is held on them. */
  byPerson(personId: string): Promise<UrgentEvent[]>
}
