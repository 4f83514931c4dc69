import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defaultClientConditions, defineConfig } from 'vite'
import { packFiles } from './packFiles.ts'

const outDir = fileURLToPath(new URL('./dist', import.meta.url))

export default defineConfig({
  plugins: [react(), { name: 'pack-files', apply: 'build', closeBundle: () => packFiles(outDir) }],
  resolve: { conditions: ['source', ...defaultClientConditions] },
  build: {
    target: 'es2023',
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    sourcemap: true,
    assetsInlineLimit: 0,
  },
  server: { host: '127.0.0.1', proxy: { '/api': process.env.GAUGEWRIGHT_DESK ?? 'http://127.0.0.1:8199' } },
})
