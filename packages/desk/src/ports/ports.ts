import type { Access } from './access.ts'
import type { Clock, Ledger } from './ledger.ts'
import type { Outbox } from './outbox.ts'
import type { Photos, RedrawPhoto } from './photos.ts'
import type { Urgent } from './urgent.ts'

/** Everything the use cases may reach. Each asks only for what it uses: `Pick<Ports, 'ledger'>`. */
export interface Ports {
  ledger: Ledger
  access: Access
  outbox: Outbox
  photos: Photos
  urgent: Urgent
  redrawPhoto: RedrawPhoto
  clock: Clock
  /** Fresh sortable id (UUID version 7). */
  newId: () => string
}
