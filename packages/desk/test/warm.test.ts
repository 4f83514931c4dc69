/** What the desk works out before the first look, and what it leaves alone. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { reviewDay } from '../src/app/reviewDay.ts'
import { warmDay } from '../src/app/warmDay.ts'
import { openTestDesk } from './support/openDesk.ts'

let desk: Awaited<ReturnType<typeof openTestDesk>>
beforeAll(async () => {
  desk = await openTestDesk({}, 150, 0.98)
  await warmDay(desk.ports, { day: 'latest', signal: new AbortController().signal })
})
afterAll(async () => {
  await desk.app.close()
})

const dayBefore = (day: string) => new Date(Date.parse(day) - 86_400_000).toISOString().slice(0, 10)
const decisionsOf = (day: string) => desk.ports.ledger.decisions('small', day, day)

describe('warmDay', () => {
  it('lets the rule decide on the day itself, never on a day that nobody has looked at', async () => {
    const { lastDay } = desk.small
    expect((await decisionsOf(lastDay)).length).toBeGreaterThan(20)
    expect(await decisionsOf(dayBefore(lastDay))).toEqual([])
  })

  it('changes no answer: days look as they do on a desk that was not warmed', async () => {
    const cold = await openTestDesk({}, 150, 0.98)
    for (const day of ['latest', dayBefore(desk.small.lastDay)]) {
      const answers = await Promise.all([reviewDay(desk.ports, { day }), reviewDay(cold.ports, { day })])
      const [warmed, plain] = answers.map((answer) => (answer.ok ? answer.value : null))
      expect(warmed?.docket).toEqual(plain?.docket)
      expect(warmed?.facts).toEqual(plain?.facts)
      expect(warmed?.areas).toEqual(plain?.areas)
    }
    await cold.app.close()
  })

  it('stops when it is told to', async () => {
    const other = await openTestDesk()
    await expect(
      warmDay(other.ports, { day: 'latest', signal: AbortSignal.abort(new Error('closing')) }),
    ).rejects.toThrow('closing')
    await other.app.close()
  })
})
