/** The server is for this desk's own pages alone. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openTestDesk } from './support/openDesk.ts'

let desk: Awaited<ReturnType<typeof openTestDesk>>
beforeAll(async () => {
  desk = await openTestDesk({}, 3)
})
afterAll(async () => {
  await desk.app.close()
})

const undo = { method: 'POST' as const, url: '/api/decisions/undo', payload: '{"decisionId":"x"}' }
const json = 'application/json'

describe('the door of the server', () => {
  it('refuses a host name that is not its own (DNS rebinding)', async () => {
    for (const host of ['evil.example', 'evil.example:8137', 'localhost.evil.example']) {
      const response = await desk.app.inject({ method: 'GET', url: '/api/map', headers: { host } })
      expect([response.statusCode, response.json().code]).toEqual([421, 'HOST_REFUSED'])
    }
    for (const host of ['localhost:8137', '127.0.0.1:9', '[::1]:8137', 'LOCALHOST']) {
      const response = await desk.app.inject({ method: 'GET', url: '/api/map', headers: { host } })
      expect(response.statusCode).toBe(200)
    }
  })

  it('refuses changes from another page, whatever it calls itself', async () => {
    for (const headers of [
      { 'content-type': json, origin: 'http://evil.example' },
      { 'content-type': json, origin: 'http://localhost:9999', host: 'localhost:8137' },
      { 'content-type': json, origin: 'null' },
      { 'content-type': json, 'sec-fetch-site': 'cross-site' },
    ]) {
      const response = await desk.app.inject({ ...undo, headers })
      expect([response.statusCode, response.json().code]).toEqual([403, 'ORIGIN_REFUSED'])
    }
    const own = {
      'content-type': json,
      origin: 'http://localhost:8137',
      host: 'localhost:8137',
      'sec-fetch-site': 'same-origin',
    }
    expect((await desk.app.inject({ ...undo, headers: own })).json().code).toBe('DECISION_UNKNOWN')
  })

  it('takes JSON only, since a form or plain text may be sent from any page', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'text/plain; application/json']) {
      const response = await desk.app.inject({ ...undo, headers: { 'content-type': type } })
      expect([response.statusCode, response.json().code]).toEqual([415, 'BODY_NOT_JSON'])
    }
    const broken = await desk.app.inject({ ...undo, headers: { 'content-type': json }, payload: '{"decisionId":' })
    expect([broken.statusCode, broken.json().code]).toEqual([400, 'ASK_NOT_VALID'])
  })

  it('takes no more than its limit', async () => {
    const payload = JSON.stringify({ decisionId: 'x'.repeat(300 * 1024) })
    const response = await desk.app.inject({ ...undo, payload, headers: { 'content-type': json } })
    expect([response.statusCode, response.json().code]).toEqual([413, 'BODY_TOO_LARGE'])
  })

  it('tells the browser to load nothing from elsewhere and to frame it nowhere', async () => {
    const { headers } = await desk.app.inject({ method: 'GET', url: '/api/map' })
    const policy = String(headers['content-security-policy'])
    expect(policy).toContain("default-src 'self'")
    expect(policy).toContain("script-src 'self'")
    expect(policy).toContain("frame-ancestors 'none'")
    expect(policy).not.toMatch(/https?:/)
    expect(policy).toContain("style-src 'self'")
    expect(policy).not.toContain('unsafe')
    expect(headers['x-content-type-options']).toBe('nosniff')
    expect(headers['cache-control']).toBe('no-store')
  })
})
