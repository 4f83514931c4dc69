/** A sitting from the observer's page to the odds of the review. */
import { type Drill, type DrillPast, makeDrill, nextSkill, seededRandom } from '@gaugewright/science'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { reviewDay } from '../src/app/reviewDay.ts'
import { openTestDesk } from './support/openDesk.ts'
import { lockDesk, signedIn } from './support/signedIn.ts'

type Desk = Awaited<ReturnType<typeof openTestDesk>>
let desk: Desk
let observer: Awaited<ReturnType<typeof signedIn>>
let owner: Awaited<ReturnType<typeof lockDesk>>
beforeEach(async () => {
  desk = await openTestDesk({}, 60)
  owner = await lockDesk(desk)
  observer = await signedIn(desk, {
    role: 'observer',
    mail: 'obs@people.example',
    name: 'O. Observer',
    gauges: ['gC3'],
  })
})
afterEach(() => desk.app.close())

/** What a learner does: right answers, or each time the same wrong one. */
function answers(seed: number, isGood: boolean): string[] {
  const random = seededRandom(seed)
  const past: DrillPast[] = []
  return Array.from({ length: 18 }, () => {
    const skill = nextSkill(past, [], random)
    const drill = makeDrill(skill, 'mm', random)
    past.push({ skill, isRight: isGood })
    return isGood ? rightAnswer(drill) : 'a lot'
  })
}
function rightAnswer(drill: Drill): string {
  if (drill.kind === 'choice') return drill.right
  if (drill.kind === 'site') return String(drill.right + 1)
  if (drill.kind === 'hail') return String(drill.longMm)
  return drill.isTrace ? 'T' : (drill.trueUm / 1000).toFixed(1)
}
const post = async (url: string, payload: object, who = observer) =>
  (
    await desk.app.inject({
      method: 'POST',
      url,
      payload,
      ...who.request,
      headers: { ...who.request.headers, 'content-type': 'application/json' },
    })
  ).json()
const factorOf = async () => {
  const kept = await desk.ports.ledger.cached('small', 'drill factors')
  return (JSON.parse(kept?.body ?? '{}') as Record<string, number>).gC3
}

describe('a sitting', () => {
  it('is marked by the desk from its seed, passes, and lowers the odds of mistakes that the observer begins with', async () => {
    const before = await reviewDay(desk.ports, { day: 'latest' })
    const saved = await post('/api/my/drills', { id: 's1', seed: 11, unit: 'mm', answers: answers(11, true) })
    expect(saved.sittings).toMatchObject([{ isPassed: true, rightShare: 1, repeat: [] }])
    expect(saved.startingFactor).toBeLessThan(0.85)
    expect(await factorOf()).toBeCloseTo(saved.startingFactor, 3)
    const after = await reviewDay(desk.ports, { day: 'latest' })
    const stands = (review: typeof before) => {
      if (!review.ok) throw new Error(review.problem.code)
      return new Map(review.value.docket.map(({ gaugeId, standsOdds }) => [gaugeId, standsOdds]))
    }
    expect([...stands(after).keys()]).toEqual([...stands(before).keys()])
    for (const [gaugeId, odds] of stands(after)) {
      if (gaugeId === 'gC3') expect(odds).toBeGreaterThanOrEqual(stands(before).get(gaugeId)!)
    }
    expect(
      (await post('/api/my/drills', { id: 's1', seed: 11, unit: 'mm', answers: answers(11, true) })).sittings,
    ).toHaveLength(1)
  })

  it('misses raise the odds; every reason is kept', async () => {
    const saved = await post('/api/my/drills', { id: 's2', seed: 12, unit: 'mm', answers: answers(12, false) })
    expect(saved.sittings[0]).toMatchObject({ isPassed: false, rightShare: 0 })
    expect(saved.startingFactor).toBeGreaterThan(1.3)
    const reasons = new Set(saved.sittings[0].answers.map(({ reason }: { reason: string }) => reason))
    expect([...reasons].sort()).toEqual(['unreadable', 'wrong choice'])
  })

  it('a refresher is asked until it is done, and is due a year after the last pass', async () => {
    const about = `person ${observer.person.id}`
    expect((await post('/api/drills/refresher', { about }, owner)).refresher).toBe('asked')
    const due = (await desk.app.inject({ url: '/api/drills/due', ...owner.request })).json()
    expect(due.people).toMatchObject([{ name: 'O. Observer', refresher: 'asked', passedOn: null }])
    expect(
      (await post('/api/my/drills', { id: 's3', seed: 13, unit: 'mm', answers: answers(13, true) })).refresher,
    ).toBe('none')
  })

  it('the pass mark is set by a coordinator alone, and a bad one is refused', async () => {
    expect((await post('/api/drills/settings', { passMark: 0.9, isRequired: true })).code).toBe('ROLE_TOO_LOW')
    expect((await post('/api/drills/settings', { passMark: 9, isRequired: true }, owner)).code).toBe('ASK_NOT_VALID')
    expect((await post('/api/drills/settings', { passMark: 0.9, isRequired: true }, owner)).settings).toEqual({
      passMark: 0.9,
      isRequired: true,
    })
  })
})
