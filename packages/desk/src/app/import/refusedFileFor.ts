import type { ImportAsk } from './importAsk.ts'

/** The file for the refused rows of a file that was brought; with several files, one each, told apart by their names. */
export function refusedFileFor(ask: Pick<ImportAsk, 'keepGood' | 'paths'>, path: string): string | null {
  if (ask.keepGood === undefined) return null
  if (ask.paths.length === 1) return ask.keepGood
  const name = (path.split(/[\\/]/).at(-1) ?? path).replace(/\.gz$/, '').replace(/\.[^.]*$/, '')
  return ask.keepGood.replace(/(\.[^./\\]*)?$/, (ending) => `-${name}${ending}`)
}
