import { describe, expect, it } from 'vitest'
import { openTestDesk } from '../../test/support/openDesk.ts'
import { isPassword } from '../app/access/passwords.ts'
import { CommandStopped } from './commandStopped.ts'
import { ownerFirst } from './ownerFirst.ts'
import type { World } from './world.ts'

/** A terminal at which these lines are typed, one after the other. */
function terminal(typed: (string | null)[], isTerminal = true): { world: World; said: () => string } {
  let said = ''
  const write = async (text: string): Promise<void> => {
    said += text
  }
  const next = async (question: string): Promise<string | null> => {
    said += question
    return typed.shift() ?? null
  }
  const world = { out: { write, isTerminal, columns: 80 }, askLine: next, askSecret: next } as unknown as World
  return { world, said: () => said }
}

const refusal = async (work: Promise<void>): Promise<string> =>
  work.then(
    () => 'went through',
    (error) => (error instanceof CommandStopped ? (error.line.split(' ')[0] ?? '') : String(error)),
  )

describe('ownerFirst', () => {
  it('asks at the terminal for name, address and password, once', async () => {
    const { ports, app } = await openTestDesk({}, 3)
    const { world, said } = terminal(['Marlow Finch', 'Marlow@Desk.example', 'tin roof and slow rain'])
    await ownerFirst(world, ports, '0.0.0.0')
    expect(said()).toMatch(/Other computers .* 0\.0\.0\.0.*\n.*Your name: Your mail address: A password/)
    const owner = await ports.access.personByMail('marlow@desk.example')
    expect(owner).toMatchObject({ name: 'Marlow Finch', role: 'coordinator' })
    expect(await isPassword(await ports.access.passwordHash(owner?.id ?? ''), 'tin roof and slow rain')).toBe(true)
    const again = terminal([])
    await ownerFirst(again.world, ports, '0.0.0.0')
    expect(again.said()).toBe('')
    await app.close()
  })

  it('refuses where nobody can be asked, or what was typed does not do, and leaves the desk without a password', async () => {
    const { ports, app } = await openTestDesk({}, 3)
    const tries: [(string | null)[], boolean, string][] = [
      [[], false, 'HOST_NEEDS_PASSWORD'],
      [['Marlow Finch', 'marlow@desk.example', 'short'], true, 'HOST_NEEDS_PASSWORD'],
      [['Marlow Finch', 'no address', 'tin roof and slow rain'], true, 'HOST_NEEDS_PASSWORD'],
      [['Marlow Finch', 'marlow@desk.example', 'marlowfinch12'], true, 'PASSWORD_GUESSABLE'],
    ]
    for (const [typed, isTerminal, code] of tries) {
      expect(await refusal(ownerFirst(terminal(typed, isTerminal).world, ports, '0.0.0.0'))).toBe(code)
    }
    expect(await ports.access.hasAnyPassword()).toBe(false)
    await app.close()
  })
})
