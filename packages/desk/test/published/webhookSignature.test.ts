/** The signature of webhook calls against the example of the Standard Webhooks specification and its libraries' tests. */
import { expect, it } from 'vitest'
import { signWebhook } from '../../src/carriers/carryWebhook.ts'

it('signWebhook matches the example of [StandardWebhooks]', () => {
  const call = { id: 'msg_p5jXN8AQM9LWM0D4loKWxJek', timestampS: 1_614_265_330, body: '{"test": 2432232314}' }
  expect(signWebhook('whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw', call)).toBe(
    'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=',
  )
})
