/** The public page for offers: a bundle of its own under /offer/, so that a stranger's phone loads nothing of the desk. */
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defaultClientConditions, defineConfig } from 'vite'
import { packFiles } from './packFiles.ts'

const here = fileURLToPath(new URL('.', import.meta.url))
const outDir = join(here, 'dist/offer')

export default defineConfig({
  root: join(here, 'offer'),
  base: '/offer/',
  publicDir: false,
  plugins: [react(), { name: 'pack-files', apply: 'build', closeBundle: () => packFiles(outDir) }],
  resolve: { conditions: ['source', ...defaultClientConditions] },
  build: {
    target: 'es2023',
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    outDir,
    emptyOutDir: true,
    sourcemap: true,
    assetsInlineLimit: 0,
  },
  server: { host: '127.0.0.1', proxy: { '/api': process.env.GAUGEWRIGHT_DESK ?? 'http://127.0.0.1:8199' } },
})
