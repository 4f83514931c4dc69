/**
 * The link in a note. Opened, it shows one button and changes nothing, since programs open links too; the button, or a mail
 * program that knows one-click (RFC 8058), posts a form to the same address, without any sign-in.
 */
import { routes } from '@gaugewright/contract'
import type { FastifyInstance, FastifyReply } from 'fastify'
import { type StopRemindersAsk, stopReminders } from '../../app/stopReminders.ts'
import type { Ports } from '../../ports/ports.ts'
import { stopPage, stopPageStyle } from '../pages/stopPage.ts'
import { statusOf } from '../statusOf.ts'

const STYLE_PATH = '/reminders/page.css'
const config = { access: 'anyone', audit: false, takesForms: true } as const
const startPath = routes.stopReminders.path.replace('/stop/', '/start/')

export function stopRemindersRoute(app: FastifyInstance, ports: Ports): void {
  app.register((scope, _options, done) => {
    // What the form says does not matter: the address says it all.
    scope.addContentTypeParser(
      ['application/x-www-form-urlencoded', 'multipart/form-data'],
      { parseAs: 'buffer', bodyLimit: 4096 },
      (_request, _body, done) => done(null, null),
    )
    const answer = async (reply: FastifyReply, ask: StopRemindersAsk): Promise<FastifyReply> => {
      const stopped = await stopReminders(ports, ask)
      reply.header('cache-control', 'no-store').type('text/html; charset=utf-8')
      if (!stopped.ok) reply.code(statusOf(stopped.problem.code))
      return reply.send(stopPage(stopped.ok ? stopped.value : null, { token: ask.token, stylePath: STYLE_PATH }))
    }
    type Asked = { Params: { token: string } }
    scope.get<Asked>(routes.stopReminders.path, { config }, ({ params }, reply) =>
      answer(reply, { token: params.token, act: 'look' }),
    )
    scope.post<Asked>(routes.stopReminders.path, { config }, ({ params }, reply) =>
      answer(reply, { token: params.token, act: 'stop' }),
    )
    scope.post<Asked>(startPath, { config }, ({ params }, reply) =>
      answer(reply, { token: params.token, act: 'start' }),
    )
    scope.get(STYLE_PATH, { config }, (_request, reply) => reply.type('text/css; charset=utf-8').send(stopPageStyle))
    done()
  })
}
