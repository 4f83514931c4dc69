/** The live door: server-sent events on a real socket, several desks, resuming after a break. */
import type { AddressInfo } from 'node:net'
import { routes, type UrgentLive, urgentLiveSchema } from '@gaugewright/contract'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { openTestDesk } from './support/openDesk.ts'
import { filingId, hailFiling } from './support/urgentFilings.ts'

let desk: Awaited<ReturnType<typeof openTestDesk>>
let url: string
const open: AbortController[] = []

beforeEach(async () => {
  desk = await openTestDesk({}, 3)
  await desk.app.listen({ host: '127.0.0.1', port: 0 })
  url = `http://127.0.0.1:${(desk.app.server.address() as AddressInfo).port}`
})
afterEach(async () => {
  for (const controller of open.splice(0)) controller.abort()
  await desk.app.close()
})

interface Listener {
  heard: { live: UrgentLive; atMs: number }[]
  until: (count: number) => Promise<void>
  hangUp: () => void
}

/** A desk that listens as a browser does. */
async function listen(after: { query?: number; lastEventId?: number } = {}): Promise<Listener> {
  const controller = new AbortController()
  open.push(controller)
  const query = after.query === undefined ? '' : `?after=${after.query}`
  const headers = new Headers(after.lastEventId === undefined ? [] : [['last-event-id', String(after.lastEventId)]])
  const response = await fetch(`${url}${routes.urgentLive.path}${query}`, { headers, signal: controller.signal })
  expect(response.headers.get('content-type')).toContain('text/event-stream')
  const heard: Listener['heard'] = []
  const read = async (): Promise<void> => {
    let rest = ''
    const decoder = new TextDecoder()
    for await (const chunk of response.body as unknown as AsyncIterable<Uint8Array>) {
      rest += decoder.decode(chunk, { stream: true })
      const blocks = rest.split('\n\n')
      rest = blocks.pop() ?? ''
      for (const block of blocks) {
        const data = /^data: (.*)$/m.exec(block)?.[1]
        if (data === undefined || !block.includes('event: urgent')) continue
        const live = urgentLiveSchema.parse(JSON.parse(data))
        expect(block).toContain(`id: ${live.number}\n`)
        heard.push({ live, atMs: performance.now() })
      }
    }
  }
  void read().catch(() => undefined)
  return {
    heard,
    until: async (count) => {
      const endMs = performance.now() + 10_000
      while (heard.length < count && performance.now() < endMs) await new Promise((resume) => setTimeout(resume, 5))
      expect(heard.length).toBeGreaterThanOrEqual(count)
    },
    hangUp: () => controller.abort(),
  }
}

async function file(number: number, diameterMm = 20 + number): Promise<number> {
  const response = await fetch(`${url}${routes.fileUrgent.path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(hailFiling(number, diameterMm)),
  })
  expect(response.status).toBe(200)
  return performance.now()
}

it('a filed report is heard by every open desk within two seconds, whole', async () => {
  const desks = [await listen(), await listen(), await listen()]
  const filedAtMs = await file(1, 55)
  for (const { until, heard } of desks) {
    await until(1)
    expect(heard[0]?.live).toMatchObject({ number: 1, what: 'filed', reportId: filingId(1) })
    expect(heard[0]?.live.item?.severity.level).toBe('significant')
    expect((heard[0]?.atMs ?? Number.NaN) - filedAtMs).toBeLessThan(2000)
  }
})

it('a desk that lost the line hears all that it missed, once and in order, and nothing that it knew', async () => {
  const first = await listen()
  for (const number of [1, 2]) await file(number)
  await first.until(2)
  first.hangUp()
  for (const number of [3, 4, 5]) await file(number)
  const again = await listen({ lastEventId: 2 })
  await again.until(3)
  await file(6)
  await again.until(4)
  expect(again.heard.map(({ live }) => live.number)).toEqual([3, 4, 5, 6])
  const byQuery = await listen({ query: 5 })
  await byQuery.until(1)
  expect(byQuery.heard[0]?.live.number).toBe(6)
})

it('without a number it begins with the next event; a number beyond the last is taken for the last', async () => {
  await file(1)
  const fresh = await listen()
  const beyond = await listen({ lastEventId: 900 })
  await file(2)
  for (const desk of [fresh, beyond]) {
    await desk.until(1)
    expect(desk.heard.map(({ live }) => live.number)).toEqual([2])
  }
})

it('what is done with a report is heard too', async () => {
  const desk = await listen()
  await file(1)
  const seen = await fetch(`${url}${routes.markSeen.path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ reportId: filingId(1), by: 'B' }),
  })
  expect(seen.status).toBe(200)
  await desk.until(2)
  expect(desk.heard[1]?.live).toMatchObject({ what: 'seen', item: null })
})

it('hears within two seconds what another process stored', async () => {
  const heard = await listen()
  await file(1)
  await heard.until(1)
  // An event that this process was not told of: the listeners are left out.
  const { urgent } = desk.ports
  const silent = urgent.listen
  urgent.listen = () => () => undefined
  const other = await listen({ query: 1 })
  await file(2)
  await other.until(1)
  urgent.listen = silent
  expect(other.heard[0]?.live.number).toBe(2)
})
