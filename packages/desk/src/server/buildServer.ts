/** The desk's HTTP server: the interface of the contract and the screens, for the pages of this desk alone. */
import Fastify, { type FastifyError, type FastifyInstance } from 'fastify'
import { refused } from '../app/answer.ts'
import { LedgerError } from '../ports/ledgerError.ts'
import type { Ports } from '../ports/ports.ts'
import { guardOrigin } from './guardOrigin.ts'
import { replyWith } from './reply.ts'
import { decideRoute } from './routes/decide.ts'
import { draftMessageRoute } from './routes/draftMessage.ts'
import { evidenceForReadingRoute } from './routes/evidenceForReading.ts'
import { exportAcceptedRoute } from './routes/exportAccepted.ts'
import { exportDayRoute } from './routes/exportDay.ts'
import { fieldForDayRoute } from './routes/fieldForDay.ts'
import { gaugeHabitsRoute } from './routes/gaugeHabits.ts'
import { mapLayersRoute } from './routes/mapLayers.ts'
import { networkHabitsRoute } from './routes/networkHabits.ts'
import { previewRuleRoute } from './routes/previewRule.ts'
import { readRuleRoute } from './routes/readRule.ts'
import { reviewDayRoute } from './routes/reviewDay.ts'
import { setRuleRoute } from './routes/setRule.ts'
import { undoDecisionRoute } from './routes/undoDecision.ts'
import { whatIfRoute } from './routes/whatIf.ts'
import { secureHeaders } from './secureHeaders.ts'
import { builtScreens, serveScreens } from './serveScreens.ts'

export interface ServerOptions {
  /** Folder of the built screens. */
  screens?: string
  /** Host names by which the desk may be addressed. */
  allowedHosts?: readonly string[]
  /** Told of every failure of ours; the asker sees only that there was one. */
  onFailure?: (error: Error) => void
}

const BODY_LIMIT_BYTES = 256 * 1024
export const loopbackHosts = ['127.0.0.1', 'localhost', '[::1]'] as const

export async function buildServer(ports: Ports, options: ServerOptions = {}): Promise<FastifyInstance> {
  const app = Fastify({
    bodyLimit: BODY_LIMIT_BYTES,
    forceCloseConnections: true,
    routerOptions: { maxParamLength: 200 },
  })
  app.decorate('onFailure', (error: Error) => options.onFailure?.(error))
  guardOrigin(app, options.allowedHosts ?? loopbackHosts)
  await secureHeaders(app)
  app.setErrorHandler((error: FastifyError | LedgerError, _request, reply) => {
    if (error instanceof LedgerError) return replyWith(reply, { ok: false, problem: error.problem })
    const problem = problemFrom(error)
    if (problem.problem.code === 'DESK_FAILED') options.onFailure?.(error)
    return replyWith(reply, problem)
  })
  for (const route of [
    reviewDayRoute,
    fieldForDayRoute,
    evidenceForReadingRoute,
    draftMessageRoute,
    whatIfRoute,
    decideRoute,
    undoDecisionRoute,
    readRuleRoute,
    setRuleRoute,
    previewRuleRoute,
    networkHabitsRoute,
    gaugeHabitsRoute,
    mapLayersRoute,
    exportAcceptedRoute,
    exportDayRoute,
  ]) {
    route(app, ports)
  }
  await serveScreens(app, options.screens ?? builtScreens())
  return app
}

function problemFrom(error: FastifyError): ReturnType<typeof refused> {
  if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE') {
    return refused('BODY_TOO_LARGE', `a body above ${BODY_LIMIT_BYTES / 1024} kB`, 'Send less at once.')
  }
  if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE' || error.code === 'FST_ERR_CTP_EMPTY_JSON_BODY') {
    return refused('BODY_NOT_JSON', 'a body that is not JSON', 'Send JSON, with the content type application/json.')
  }
  if ((error.statusCode ?? 500) < 500) {
    return refused('ASK_NOT_VALID', error.message, 'Send the fields of the interface as documented.')
  }
  return refused(
    'DESK_FAILED',
    'something failed inside the desk; nothing was changed',
    'Try again; if it stays, run "gaugewright doctor".',
  )
}
