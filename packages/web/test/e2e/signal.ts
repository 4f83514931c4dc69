/** A way to the desk that can be cut and mended, for pages and service workers alike: what a phone has and loses. */
import { connect, createServer, type Socket } from 'node:net'
import { freePort } from './startDesk.ts'

export interface Signal {
  url: string
  cut: () => Promise<void>
  mend: () => Promise<void>
}

export async function signalTo(deskUrl: string): Promise<Signal> {
  const deskPort = Number(new URL(deskUrl).port)
  const port = await freePort()
  const open = new Set<Socket>()
  const server = createServer((phone) => {
    const desk = connect(deskPort, '127.0.0.1')
    for (const socket of [phone, desk]) {
      open.add(socket)
      socket.on('error', () => undefined)
      socket.on('close', () => {
        open.delete(socket)
        phone.destroy()
        desk.destroy()
      })
    }
    phone.pipe(desk).pipe(phone)
  })
  const mend = () => new Promise<void>((done) => server.listen(port, '127.0.0.1', done))
  const cut = () =>
    new Promise<void>((done) => {
      server.close(() => done())
      for (const socket of open) socket.destroy()
    })
  await mend()
  return { url: `http://127.0.0.1:${port}`, cut, mend }
}
