import type { Absences } from './absence.ts'
import type { Access } from './access.ts'
import type { Carriers, OutgoingSecrets } from './carriers.ts'
import type { Journal } from './journal.ts'
import type { Clock, Ledger } from './ledger.ts'
import type { Outbox } from './outbox.ts'
import type { OutgoingSettingsStore } from './outgoingSettings.ts'
import type { Photos, RedrawPhoto } from './photos.ts'
import type { Senders } from './senders.ts'
import type { Urgent } from './urgent.ts'

/** Everything the use cases may reach. Each asks only for what it uses: `Pick<Ports, 'ledger'>`. */
export interface Ports {
  ledger: Ledger
  access: Access
  absences: Absences
  journal: Journal
  outbox: Outbox
  outgoingSettings: OutgoingSettingsStore
  carriers: Carriers
  outgoingSecrets: OutgoingSecrets
  photos: Photos
  urgent: Urgent
  senders: Senders
  redrawPhoto: RedrawPhoto
  clock: Clock
  /** Fresh sortable id (UUID version 7). */
  newId: () => string
}
