import type { TextAsk } from '../ports/intakeFiles.ts'
import { textBlocks } from './textBlocks.ts'

export interface TextLine {
  /** From 1. */
  line: number
  text: string
}

/** The lines of a file without their breaks, a block at a time. @throws {IntakeRefusal} as textBlocks */
export async function* textLines(path: string, ask: TextAsk): AsyncGenerator<TextLine[]> {
  let rest = ''
  let line = 0
  for await (const block of textBlocks(path, ask)) {
    const texts = (rest + block).split('\n')
    rest = texts.pop() ?? ''
    yield texts.map((text) => ({ line: ++line, text: text.endsWith('\r') ? text.slice(0, -1) : text }))
  }
  if (rest !== '') yield [{ line: line + 1, text: rest }]
}
