/**
 * The live line to the desk: one for each open page, whoever listens on it. The browser takes it up again by itself after
 * the last event that it heard; a line that has been silent for longer than the desk's beats is cut and taken up anew.
 */
import { routes, type UrgentLive } from '@gaugewright/contract'

export type LineState = 'connecting' | 'live' | 'lost'

const SILENCE_MS = 25_000
const AGAIN_MS = 2_000

export class UrgentLine {
  state: LineState = 'connecting'
  readonly #heard = new Set<(live: UrgentLive) => void>()
  readonly #changed = new Set<() => void>()
  readonly #after: () => number | null
  readonly #open: (path: string) => EventSource
  #source: EventSource | null = null
  #last: number | null = null
  #timer: ReturnType<typeof setTimeout> | undefined

  /** @param after  number of the last event that the page knows already */
  constructor(after: () => number | null, open: (path: string) => EventSource = (path) => new EventSource(path)) {
    this.#after = after
    this.#open = open
  }

  start(): void {
    this.#connect()
  }

  stop(): void {
    clearTimeout(this.#timer)
    this.#source?.close()
    this.#source = null
  }

  onLive(listener: (live: UrgentLive) => void): () => void {
    this.#heard.add(listener)
    return () => void this.#heard.delete(listener)
  }

  readonly onState = (listener: () => void): (() => void) => {
    this.#changed.add(listener)
    return () => void this.#changed.delete(listener)
  }

  #connect(): void {
    this.stop()
    const after = this.#last ?? this.#after()
    const source = this.#open(after === null ? routes.urgentLive.path : `${routes.urgentLive.path}?after=${after}`)
    this.#source = source
    this.#watchSilence()
    source.addEventListener('open', () => this.#become('live'))
    source.addEventListener('beat', () => this.#become('live'))
    source.addEventListener('urgent', (event) => {
      const live = JSON.parse(event.data as string) as UrgentLive
      this.#become('live')
      // The browser may ask again from a number that it has heard in part.
      if (this.#last !== null && live.number <= this.#last) return
      this.#last = live.number
      for (const listener of [...this.#heard]) listener(live)
    })
    source.addEventListener('error', () => {
      this.#become('lost')
      // 2: the browser has given up (the desk was closed, or sign-in is needed).
      if (source.readyState === 2) this.#again()
    })
  }

  #become(state: LineState): void {
    if (state === 'live') this.#watchSilence()
    if (this.state === state) return
    this.state = state
    for (const listener of [...this.#changed]) listener()
  }

  #watchSilence(): void {
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => {
      this.#become('lost')
      this.#connect()
    }, SILENCE_MS)
  }

  #again(): void {
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => this.#connect(), AGAIN_MS)
  }
}
