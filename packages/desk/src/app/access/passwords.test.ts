import * as argon2 from '@node-rs/argon2'
import { describe, expect, it, vi } from 'vitest'
import { isGuessable } from './guessable.ts'
import { hashPassword, isPassword } from './passwords.ts'

vi.mock('@node-rs/argon2', async (original) => {
  const real = await original<typeof argon2>()
  return { ...real, verify: vi.fn(real.verify) }
})

describe('a password', () => {
  it('is kept as Argon2id with 19 MiB, two passes and one lane, each with a salt of its own (OWASP cheat sheet)', async () => {
    const [one, other] = [await hashPassword('tin roof and slow rain'), await hashPassword('tin roof and slow rain')]
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
    expect(one).not.toBe(other)
    expect([await isPassword(one, 'tin roof and slow rain'), await isPassword(one, 'tin roof')]).toEqual([true, false])
  })

  it('costs as much to check for nobody as for somebody (timing)', async () => {
    const kept = await hashPassword('tin roof and slow rain')
    const verify = vi.mocked(argon2.verify)
    verify.mockClear()
    await isPassword(kept, 'wrong')
    expect(await isPassword(null, 'wrong')).toBe(false)
    const costs = verify.mock.calls.map(([hash]) => String(hash).split('$').slice(1, 4))
    expect(costs).toEqual([
      ['argon2id', 'v=19', 'm=19456,t=2,p=1'],
      ['argon2id', 'v=19', 'm=19456,t=2,p=1'],
    ])
  })

  it('fits however the keyboard composes its letters', async () => {
    const kept = await hashPassword('caf\u00e9 lluvia tejado')
    expect(await isPassword(kept, 'cafe\u0301 lluvia tejado')).toBe(true)
  })

  it('is guessable when it is a used one, a date, a row of keys or about the person', () => {
    for (const password of ['passwordpassword', '123456789012', 'qwertyuiop12', 'gaugewright2026', 'marlowfinch1']) {
      expect(isGuessable(password, ['Marlow Finch', 'Marlow', 'Finch']), password).toBe(true)
    }
    expect(isGuessable('tin roof and slow rain', ['Marlow Finch'])).toBe(false)
  })
})
