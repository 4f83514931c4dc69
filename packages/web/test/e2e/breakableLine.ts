/** A way to a running desk that can be cut and mended, as a network does: every byte is passed on as it is. */
import { type AddressInfo, connect, createServer, type Socket } from 'node:net'

export type BreakableLine = { url: string; cut: () => void; mend: () => void; close: () => void }

export async function breakableLine(deskUrl: string): Promise<BreakableLine> {
  const port = Number(new URL(deskUrl).port)
  const open = new Set<Socket>()
  let isCut = false
  const server = createServer((near) => {
    if (isCut) return void near.destroy()
    const far = connect(port, '127.0.0.1')
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      open.add(one)
      one.pipe(other)
      one.on('error', () => other.destroy())
      one.on('close', () => {
        open.delete(one)
        other.destroy()
      })
    }
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const cut = (): void => {
    isCut = true
    for (const socket of open) socket.destroy()
  }
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    cut,
    mend: () => {
      isCut = false
    },
    close: () => {
      cut()
      server.close()
    },
  }
}
