import { expect, it } from 'vitest'
import { newUuidV7 } from './newUuidV7.ts'

it('newUuidV7 has version 7, the variant of RFC 9562, and the time in front', () => {
  const id = newUuidV7(0x019a_1234_5678)
  expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
  expect(id.replaceAll('-', '').slice(0, 12)).toBe('019a12345678')
})

it('ids made one after another rise and differ, thousands within one millisecond too, and when the clock steps back', () => {
  const now = 0x019a_1234_9999
  const ids = Array.from({ length: 9000 }, (_, index) => newUuidV7(index < 6000 ? now : now - 5))
  expect(new Set(ids).size).toBe(9000)
  expect([...ids].sort()).toEqual(ids)
})
