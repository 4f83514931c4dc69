/** What the command line may reach, picked in main.ts: ledgers, files, the server, where text goes. */
import type { ArchiveFiles } from '../ports/archiveFiles.ts'
import type { Folders } from '../ports/folders.ts'
import type { IntakeFiles } from '../ports/intakeFiles.ts'
import type { LedgerFiles } from '../ports/ledgerFiles.ts'
import type { Ports } from '../ports/ports.ts'

export interface World {
  /**
   * Opens the ledger file; with `create` an absent one is made. The caller closes `ports.ledger`.
   * @throws {LedgerError}
   */
  openLedger: (path: string, options: { create: boolean }) => Promise<Ports>
  /** Copies, restores and examines ledger files as files. */
  ledgerFiles: LedgerFiles
  archiveFiles: ArchiveFiles
  /** Files brought into a ledger by `import`. */
  intakeFiles: IntakeFiles
  /** Folders that files and mails come into. */
  folders: Folders
  /** Null where the port is taken or not allowed. */
  startServer: (ports: Ports, ask: StartAsk) => Promise<RunningServer | null>
  /** Whether only this computer reaches the address. */
  isLoopback: (host: string) => boolean
  out: TextOut
  err: TextOut
  /** Resolves when the person asks to stop (Ctrl+C, or the system's polite signal). */
  untilStopped: () => Promise<void>
  /** One line typed at the terminal; null where there is nobody to ask. */
  askLine: (question: string) => Promise<string | null>
  /** Typed unseen at the terminal, else one line of standard input; null where there is none. */
  askSecret: (question: string) => Promise<string | null>
  openBrowser: (url: string) => Promise<void>
  version: string
}

export interface StartAsk {
  host: string
  port: number
  publicUrl?: string
  tls?: { cert: string; key: string }
  onFailure: (error: Error) => void
}

export interface RunningServer {
  url: string
  close: () => Promise<void>
}

export interface TextOut {
  write: (text: string) => Promise<void>
  isTerminal: boolean
  columns: number
}
