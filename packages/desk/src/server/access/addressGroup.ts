/** Addresses that are taken for one asker: an IPv4 address, or the network of an IPv6 address. */
import { isIPv6 } from 'node:net'

/** One customer usually holds 2^64 addresses of IPv6: the first four groups are counted as one asker. */
export function addressGroup(address: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1]
  if (mapped !== undefined) return mapped
  if (!isIPv6(address)) return address
  const [head = '', tail] = address.toLowerCase().split('%')[0]!.split('::')
  const front = head === '' ? [] : head.split(':')
  const back = tail === undefined || tail === '' ? [] : tail.split(':')
  const missing = tail === undefined ? 0 : Math.max(0, 8 - front.length - back.length)
  const groups = [...front, ...Array<string>(missing).fill('0'), ...back].map((group) => Number.parseInt(group, 16))
  return groups
    .slice(0, 4)
    .map((group) => group.toString(16))
    .join(':')
}
