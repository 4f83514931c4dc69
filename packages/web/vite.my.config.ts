/** The observer's page: a bundle of its own under /my/, and the service worker that keeps it for the time without a signal. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { build, defaultClientConditions, defineConfig, type Plugin } from 'vite'
import { isPacked, packFiles } from './packFiles.ts'

const here = fileURLToPath(new URL('.', import.meta.url))
const outDir = join(here, 'dist/my')
const target = { target: 'es2023', cssTarget: ['chrome123', 'firefox120', 'safari17.5'] }
const resolve = { conditions: ['source', ...defaultClientConditions] }

/** Once the page is built: every file of it with its digest, and a worker that holds that list. */
function workerOfBuiltPage(): Plugin {
  return {
    name: 'worker-of-built-page',
    apply: 'build',
    async closeBundle() {
      const files = readdirSync(outDir, { recursive: true, withFileTypes: true })
        .filter(
          (entry) =>
            entry.isFile() && !/\.(map|txt)$/.test(entry.name) && !isPacked(entry.name) && entry.name !== 'worker.js',
        )
        .map((entry) => join(entry.parentPath, entry.name))
      const kept = files.map((file) => ({
        url: `/my/${file.slice(outDir.length + 1).replaceAll('\\', '/')}`,
        revision: createHash('sha256').update(readFileSync(file)).digest('hex').slice(0, 16),
      }))
      const define = { __KEPT_FILES__: JSON.stringify(kept), 'process.env.NODE_ENV': '"production"' }
      await build({
        configFile: false,
        publicDir: false,
        define,
        resolve,
        logLevel: 'warn',
        build: {
          ...target,
          outDir,
          emptyOutDir: false,
          copyPublicDir: false,
          lib: { entry: join(here, 'src/myWorker.ts'), formats: ['iife'], name: 'worker', fileName: () => 'worker.js' },
        },
      })
      packFiles(outDir)
    },
  }
}

export default defineConfig({
  root: join(here, 'my'),
  base: '/my/',
  publicDir: join(here, 'my/public'),
  plugins: [react(), workerOfBuiltPage()],
  resolve,
  build: { ...target, outDir, emptyOutDir: true, sourcemap: true, assetsInlineLimit: 0 },
  server: { host: '127.0.0.1', proxy: { '/api': process.env.GAUGEWRIGHT_DESK ?? 'http://127.0.0.1:8199' } },
})
