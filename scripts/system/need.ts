/** Finds what a command needs from the system, installs it when that is allowed, or says in one line what to do. */
import { findChromium } from './findChromium.ts'
import { installOnDebian, mayInstall } from './installOnDebian.ts'
import { isNodeNewEnough, oldestNode } from './isNodeNewEnough.ts'

export type Need = 'node' | 'chromium'
export type NeedAnswer = { ok: true; environment: Record<string, string> } | { ok: false; advice: string }

/** @returns environment variables for whatever is run next, or one line of advice */
export function need(what: Need): NeedAnswer {
  return what === 'node' ? needNode() : needChromium()
}

function needNode(): NeedAnswer {
  if (isNodeNewEnough(process.versions.node)) return { ok: true, environment: {} }
  const wanted = `${oldestNode.major}.${oldestNode.minor}`
  return {
    ok: false,
    advice: `Gaugewright needs Node ${wanted} or newer; this is ${process.versions.node}. See nodejs.org.`,
  }
}

function needChromium(): NeedAnswer {
  const found = findChromium()
  if (found !== null) return { ok: true, environment: { CHROMIUM_PATH: found } }
  if (process.env.CHROMIUM_PATH) {
    return {
      ok: false,
      advice: `CHROMIUM_PATH is ${process.env.CHROMIUM_PATH}, where there is no file: correct or unset it.`,
    }
  }
  if (mayInstall() && installOnDebian('chromium')) {
    const installed = findChromium()
    if (installed !== null) return { ok: true, environment: { CHROMIUM_PATH: installed } }
  }
  return {
    ok: false,
    advice: 'The browser tests need Chromium (Debian: apt-get install chromium), or set CHROMIUM_PATH to one.',
  }
}
