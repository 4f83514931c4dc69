/** Photos of urgent reports through the server: who may send and see them, and what comes out. */
import { randomUUID } from 'node:crypto'
import { type FileUrgentAsk, fileUrgentAskSchema, photoLimits } from '@gaugewright/contract'
import sharp from 'sharp'
import { beforeEach, describe, expect, it } from 'vitest'
import { addPhoto } from '../src/app/addPhoto.ts'
import { urgentForm } from '../src/app/urgentForm.ts'
import { openTestDesk } from './support/openDesk.ts'

let desk: Awaited<ReturnType<typeof openTestDesk>>
let report: FileUrgentAsk
beforeEach(async () => {
  desk = await openTestDesk({}, 3)
  report = fileUrgentAskSchema.parse({
    id: randomUUID(),
    where: { kind: 'gauge', gaugeId: 'gC3' },
    seenAtUtc: '2026-05-31T08:20:00Z',
    by: 'Observer C3',
    seen: { kind: 'hail', largest: { diameterMm: 44.45, by: 'object', object: 'golf ball' } },
  })
  await desk.ports.urgent.file('small', {
    what: 'filed',
    id: report.id,
    reportId: report.id,
    atUtc: '2026-05-31T08:21:00Z',
    by: report.by,
    byPersonId: 'p-c3',
    report,
  })
})

const picture = () =>
  sharp({ create: { width: 64, height: 48, channels: 3, background: '#88a' } })
    .withExif({ IFD0: { Make: 'Inventedphone' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '47/1 11/1 33/1' } })
    .jpeg()
    .toBuffer()

const send = (imageBase64: string, reportId = report.id) =>
  desk.app.inject({
    method: 'POST',
    url: '/api/photos',
    headers: { 'content-type': 'application/json' },
    payload: JSON.stringify({ reportId, imageBase64 }),
  })

const observer = (gauges: string[], personId = 'p-x') => ({ personId, role: 'observer' as const, name: 'X', gauges })

describe('photos of urgent reports', () => {
  it('a photo with a position goes in, and comes out without it, as a picture that is nothing else', async () => {
    const image = await picture()
    expect(image.toString('latin1')).toContain('Inventedphone')
    const sent = await send(image.toString('base64'))
    expect(sent.statusCode).toBe(200)
    const { sha256 } = sent.json()
    const listed = await desk.app.inject({ method: 'GET', url: `/api/urgent/${report.id}/photos` })
    expect(listed.json()).toEqual({ photos: [sent.json()] })
    const served = await desk.app.inject({ method: 'GET', url: `/api/photos/${sha256}` })
    expect(served.statusCode).toBe(200)
    expect(served.headers['content-type']).toBe('image/jpeg')
    expect(served.headers['x-content-type-options']).toBe('nosniff')
    expect(served.headers['content-disposition']).toBe(`attachment; filename="photo-${sha256.slice(0, 12)}.jpg"`)
    expect(served.headers['cache-control']).toContain('private')
    expect(served.rawPayload.toString('latin1')).not.toMatch(/Inventedphone|Exif|GPS/)
    expect((await sharp(served.rawPayload).metadata()).width).toBe(64)
  })

  it('the same photo sent again is there once', async () => {
    const image = (await picture()).toString('base64')
    expect((await send(image)).json()).toEqual((await send(image)).json())
    expect((await desk.ports.photos.ofReport('small', report.id)).length).toBe(1)
  })

  it('refuses what is no photo, what is too large, and a report that is not there', async () => {
    const page = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>').toString('base64')
    expect((await send(page)).json().code).toBe('PHOTO_UNREADABLE')
    const large = await send('A'.repeat(Math.ceil(photoLimits.bytes / 3) * 4 + 4))
    expect([large.statusCode, large.json().code]).toEqual([400, 'ASK_NOT_VALID'])
    const larger = await send('A'.repeat(5_000_000))
    expect([larger.statusCode, larger.json().code]).toEqual([413, 'BODY_TOO_LARGE'])
    const unknown = await send((await picture()).toString('base64'), randomUUID())
    expect([unknown.statusCode, unknown.json().code]).toEqual([404, 'URGENT_UNKNOWN'])
    const name = await desk.app.inject({ method: 'GET', url: '/api/photos/..%2F..%2Fetc%2Fpasswd' })
    expect([name.statusCode, name.json().code]).toEqual([404, 'PHOTO_UNKNOWN'])
  })

  it('takes a photo from whoever filed the report or reads its gauge, and from nobody else', async () => {
    const ask = { reportId: report.id, imageBase64: (await picture()).toString('base64') }
    const by = async (actor: ReturnType<typeof observer>) => {
      const answer = await addPhoto(desk.ports, { ...ask, actor })
      return answer.ok ? 'taken' : answer.problem.code
    }
    expect(await by(observer(['gA1']))).toBe('URGENT_UNKNOWN')
    expect(await by(observer(['gC3']))).toBe('taken')
    expect(await by(observer([], 'p-c3'))).toBe('taken')
  })

  it('tells the form whose gauge it is and nothing of any other', async () => {
    const own = await urgentForm(desk.ports, { actor: observer(['gC3']) })
    expect(own).toMatchObject({ ok: true, value: { gauge: { code: 'C3' }, observerName: 'Observer C3' } })
    const other = await urgentForm(desk.ports, { gauge: 'A1', actor: observer(['gC3']) })
    expect(other).toMatchObject({ ok: false, problem: { code: 'GAUGE_NOT_YOURS' } })
    const none = await urgentForm(desk.ports, { actor: observer([]) })
    expect(none).toMatchObject({ ok: true, value: { gauge: null, emergencyNumber: null } })
  })
})
