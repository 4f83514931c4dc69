import { describe, expect, it } from 'vitest'
import { linkIn, pathAfter } from './signInView.ts'

describe('the sign-in page', () => {
  it('finds the link behind the number sign, and nothing elsewhere', () => {
    expect(linkIn('#link=ab-_9')).toBe('ab-_9')
    expect([linkIn(''), linkIn('#other')]).toEqual([null, null])
  })

  it('goes on to a path of this desk and to no other site', () => {
    expect(pathAfter('/settings', 'colleague')).toBe('/settings')
    for (const next of [null, '//evil.example', '/\\evil.example', 'https://evil.example', '/sign-in?next=/sign-in']) {
      expect(pathAfter(next, 'viewer')).toBe('/')
    }
  })

  it('brings an observer to their own gauge, whatever was asked for', () => {
    expect([pathAfter('/settings', 'observer'), pathAfter('/my/record', 'observer')]).toEqual(['/my/', '/my/record'])
  })
})
