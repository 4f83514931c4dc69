import { expect, it } from 'vitest'
import { RecentlyUsed } from './recentlyUsed.ts'

it('RecentlyUsed forgets what was used longest ago, not what was put in first', () => {
  const cache = new RecentlyUsed<number>(2)
  cache.set('a', 1)
  cache.set('b', 2)
  expect(cache.get('a')).toBe(1)
  cache.set('c', 3)
  expect([cache.get('a'), cache.get('b'), cache.get('c')]).toEqual([1, undefined, 3])
})
