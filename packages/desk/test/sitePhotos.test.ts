/** Photos that go with surveys: what is kept of them, who may send them, and that they go with their person. */
import type { Actor } from '@gaugewright/contract'
import sharp from 'sharp'
import { beforeEach, describe, expect, it } from 'vitest'
import { myGauge } from '../src/app/myGauge.ts'
import { ownLink } from '../src/app/people/ownLink.ts'
import { readSite } from '../src/app/readSite.ts'
import { saveSurvey } from '../src/app/saveSurvey.ts'
import { openTestDesk } from './support/openDesk.ts'

let desk: Awaited<ReturnType<typeof openTestDesk>>
let candidateId: string
let secret: string
beforeEach(async () => {
  desk = await openTestDesk({}, 3)
  const offer = { name: 'Pia Example', mail: null, phone: '555 0100', language: 'en', place: 'Behind the mill' }
  candidateId = (await post('/api/offers', { offer: { ...offer, yard: 'some trees' } })).id
  const link = ownLink(desk.ports, 'small', `candidate ${candidateId}`, 'http://desk.example')
  await desk.ports.journal.append([link.entry])
  secret = /#mine=(\S+)/.exec(link.url)![1]!
})

const post = async (url: string, payload: object) =>
  (await desk.app.inject({ method: 'POST', url, payload, headers: { 'content-type': 'application/json' } })).json()
const nothing = { outline: [], obstacles: [], hazards: [], slopeDeg: null, gauge: null }
const drawn = {
  ...nothing,
  outline: [
    [0, 0],
    [20, 0],
    [20, 15],
    [0, 15],
  ].map(([xM, yM]) => ({ xM: xM!, yM: yM! })),
  gauge: { at: { xM: 8, yM: 7 }, rimM: 0.6, hasWindShield: false },
}
let shade = 0
async function photo() {
  const background = { r: shade++ % 256, g: 90, b: 40 }
  const jpeg = await sharp({ create: { width: 64, height: 48, channels: 3, background } })
    .withExif({ IFD0: { Make: 'Inventedphone' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '45/1 6/1 12/1' } })
    .jpeg()
    .toBuffer()
  return { imageBase64: jpeg.toString('base64'), equivalentMm: 26 }
}
const photos = (count: number) => Promise.all(Array.from({ length: count }, photo))
const sendYard = async (id: string, count: number, plan: object = nothing) =>
  post('/api/offer/mine/yard', { secret, id, plan, photos: await photos(count) })
const site = async () => (await desk.app.inject({ url: `/api/site?about=candidate ${candidateId}` })).json()

describe('photos of a yard', () => {
  it('come from a candidate alone, keep their angle of view and lose their place', async () => {
    expect(await sendYard('s1', 2)).toMatchObject({ plan: null, photoCount: 2 })
    const [survey] = (await site()).surveys
    expect(survey).toMatchObject({ exposure: null, photos: [{ equivalentMm: 26 }, { equivalentMm: 26 }] })
    expect((await site()).due).toBe('never surveyed')
    const served = await desk.app.inject({ url: `/api/photos/${survey.photos[0].sha256}` })
    expect(served.statusCode).toBe(200)
    expect((await sharp(served.rawPayload).metadata()).exif).toBeUndefined()
    expect(served.rawPayload.toString('latin1')).not.toContain('Inventedphone')
  })

  it('do not hide the yard that was drawn before them', async () => {
    expect((await sendYard('s1', 0, drawn)).plan.gauge.at.xM).toBe(8)
    expect(await sendYard('s2', 1)).toMatchObject({ photoCount: 1, plan: { gauge: { at: { xM: 8 } } } })
    const page = await desk.app.inject({ url: `/api/site/report.html?about=candidate ${candidateId}` })
    expect(page.body).toContain('<svg')
    expect((await site()).due).toBe('not yet')
  })

  it('an empty plan without a photo is refused; a bad photo keeps none of the others', async () => {
    expect((await sendYard('s1', 0)).code).toBe('YARD_TOO_FEW_CORNERS')
    const bad = { imageBase64: Buffer.from('no picture').toString('base64'), equivalentMm: null }
    const sent = [...(await photos(1)), bad]
    expect(await post('/api/offer/mine/yard', { secret, id: 's2', plan: nothing, photos: sent })).toMatchObject({
      code: 'PHOTO_UNREADABLE',
      seen: 'photo 2 cannot be opened',
    })
    expect(await desk.ports.photos.usedBytes()).toBe(0)
    expect((await site()).surveys).toEqual([])
  })

  it('of one candidate are twenty-four, and the same survey again is no more of them', async () => {
    for (const id of ['a', 'b', 'c', 'd']) expect((await sendYard(id, 6)).photoCount).toBeGreaterThan(0)
    expect((await sendYard('d', 6)).photoCount).toBe(24)
    expect((await sendYard('e', 1)).code).toBe('PHOTOS_TOO_MANY')
    expect((await sendYard('f', 7)).code).toBe('ASK_NOT_VALID')
  })

  it('go with the person who sent them', async () => {
    await sendYard('s1', 2)
    expect(await desk.ports.photos.usedBytes()).toBeGreaterThan(0)
    expect(await post('/api/offer/mine/withdraw', { secret })).toEqual({ gone: true })
    expect(await desk.ports.photos.usedBytes()).toBe(0)
  })
})

describe('the site of a gauge', () => {
  const reader: Actor = { personId: 'ada', role: 'observer', name: 'Ada', gauges: ['gA1'] }
  const doer = { personId: 'ada', door: 'desk' as const }
  const codeOf = async (id: string) => (await desk.ports.ledger.gauge('small', id))!.code

  it('is drawn anew by its observer when the desk asks, and by no other', async () => {
    const [own, other] = [await codeOf('gA1'), await codeOf('gB2')]
    expect(await readSite(desk.ports, { about: `gauge ${other}`, actor: reader })).toMatchObject({
      ok: false,
      problem: { code: 'GAUGE_NOT_YOURS' },
    })
    await post('/api/surveys/ask', { about: `gauge ${own}`, why: 'The hedge has grown.' })
    const page = async () => await myGauge(desk.ports, { actor: reader, gauge: own })
    expect(await page()).toMatchObject({ ok: true, value: { siteDue: 'asked' } })
    const ask = { about: `gauge ${own}`, id: 's1', surveyedOn: '2026-05-31', note: '', plan: drawn, photos: [] }
    expect(await saveSurvey(desk.ports, { ...ask, actor: reader }, doer)).toMatchObject({ ok: true })
    expect(await page()).toMatchObject({ ok: true, value: { siteDue: 'not yet' } })
    expect(await readSite(desk.ports, { about: `gauge ${own}`, actor: reader })).toMatchObject({
      ok: true,
      value: { surveys: [{ id: 's1', exposure: { class: 2 } }] },
    })
  })
})
