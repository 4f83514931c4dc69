#!/usr/bin/env node
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const main = new URL('../dist/main.js', import.meta.url)
if (!existsSync(fileURLToPath(main))) {
  console.error('gaugewright is not built yet: run "npm run build" in the repository first')
  process.exit(1)
}
await import(main.href)
