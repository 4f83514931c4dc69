import { expect, it } from 'vitest'
import { addressGroup } from './addressGroup.ts'

it('takes the addresses of one IPv6 network for one asker, and each IPv4 address for one', () => {
  expect(addressGroup('192.0.2.1')).toBe('192.0.2.1')
  expect(addressGroup('::ffff:192.0.2.1')).toBe('192.0.2.1')
  expect(addressGroup('2001:db8:1:2:3:4:5:6')).toBe('2001:db8:1:2')
  expect(addressGroup('2001:DB8:0001:2::9')).toBe('2001:db8:1:2')
  expect(addressGroup('2001:db8::1')).toBe('2001:db8:0:0')
  expect(addressGroup('::1')).toBe('0:0:0:0')
  expect(addressGroup('fe80::1%eth0')).toBe('fe80:0:0:0')
})
