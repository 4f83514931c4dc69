import { hostname, networkInterfaces } from 'node:os'
import type { Ports } from '../ports/ports.ts'
import { buildServer, loopbackHosts, type ServerOptions } from './buildServer.ts'

export interface ListenAsk extends Pick<ServerOptions, 'publicUrl' | 'tls'> {
  /** Address or host name of this computer to listen on; every one with `0.0.0.0` or `::`. */
  host: string
  /** 0 takes a free one. */
  port: number
  onFailure: (error: Error) => void
}

/** Builds the server and listens; null where the port is taken or not allowed. */
export async function listenOn(
  ports: Ports,
  { host, port, onFailure, publicUrl, tls }: ListenAsk,
): Promise<{ url: string; close: () => Promise<void> } | null> {
  const server = await buildServer(ports, {
    onFailure,
    allowedHosts: namesOf(host, publicUrl),
    mayOpen: isLoopbackHost(host) && publicUrl === undefined,
    ...(publicUrl !== undefined && { publicUrl }),
    ...(tls !== undefined && { tls }),
  })
  try {
    const url = await server.listen({ host, port })
    return { url: publicUrl ?? url, close: () => server.close() }
  } catch (error) {
    await server.close()
    const { code } = error as NodeJS.ErrnoException
    if (code === 'EADDRINUSE' || code === 'EACCES') return null
    throw error
  }
}

/** Whether only this computer reaches the address. */
export function isLoopbackHost(host: string): boolean {
  return /^127\.\d+\.\d+\.\d+$/.test(host) || ['localhost', '::1', '[::1]'].includes(host.toLowerCase())
}

/** The names by which browsers may ask for the desk: others are refused (DNS rebinding). */
function namesOf(host: string, publicUrl: string | undefined): string[] {
  const names = new Set<string>(loopbackHosts)
  if (publicUrl !== undefined) names.add(new URL(publicUrl).hostname)
  if (host === '0.0.0.0' || host === '::') {
    names.add(hostname().toLowerCase())
    for (const { address, family } of Object.values(networkInterfaces()).flatMap((list) => list ?? [])) {
      names.add(family === 'IPv6' ? `[${address.split('%')[0]}]` : address)
    }
  } else {
    names.add(host.includes(':') && !host.startsWith('[') ? `[${host}]` : host.toLowerCase())
  }
  return [...names]
}
