/** The built screens, with the one page for every path that is not the interface's. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import fastifyStatic from '@fastify/static'
import type { FastifyInstance } from 'fastify'
import { refused } from '../app/answer.ts'
import { replyWith } from './reply.ts'

/** Where `npm run build` puts the screens. */
export function builtScreens(): string {
  return fileURLToPath(new URL('../../../web/dist', import.meta.url))
}

/** @param root  folder of the built screens */
export async function serveScreens(app: FastifyInstance, root: string): Promise<void> {
  const isBuilt = existsSync(join(root, 'index.html'))
  if (isBuilt) {
    await app.register(fastifyStatic, {
      root,
      cacheControl: false,
      // The build lays a packed file beside each; without one the file itself is sent.
      preCompressed: true,
      setHeaders: (reply, path) => {
        const isNamedByContent = /[/\\]assets[/\\]/.test(path)
        reply.header('cache-control', isNamedByContent ? 'public, max-age=31536000, immutable' : 'no-cache')
      },
    })
  }
  app.setNotFoundHandler({ preHandler: app.rateLimit() }, (request, reply) => {
    const path = request.url.split('?')[0] ?? ''
    if (path.startsWith('/api/') || request.method !== 'GET') {
      const seen = `${request.method} ${path.slice(0, 200)}`
      return replyWith(
        reply,
        refused('ROUTE_UNKNOWN', seen, 'See the list of paths in packages/contract/src/routes.ts.'),
      )
    }
    if (!isBuilt) {
      return replyWith(
        reply,
        refused('SCREENS_NOT_BUILT', root, 'Run "npm run build" in the repository, then serve again.'),
      )
    }
    if (/\.[a-z0-9]+$/i.test(path)) {
      return replyWith(reply, refused('ROUTE_UNKNOWN', path.slice(0, 200), 'Open the desk at its first page.'))
    }
    // The observer's page and the public page are pages of their own.
    const own = /^\/(my|offer)(\/|$)/.exec(path)?.[1]
    return reply.sendFile(own === undefined ? 'index.html' : `${own}/index.html`)
  })
}
