import type { OfferTicket } from '@gaugewright/contract'

/** The number for a ticket, found in a worker while the form is filled in. */
export function solvePuzzle({ ticket, zeroBits }: OfferTicket): Promise<string> {
  return new Promise((found, failed) => {
    const worker = new Worker(new URL('../../workers/puzzle.worker.ts', import.meta.url), { type: 'module' })
    worker.onmessage = ({ data }: MessageEvent<string>) => {
      worker.terminate()
      found(data)
    }
    worker.onerror = () => failed(new Error('the page could not do its sum'))
    worker.postMessage({ ticket, zeroBits })
  })
}
