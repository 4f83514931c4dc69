import { expect, it } from 'vitest'
import { readLines } from './readLines.ts'

async function linesOf(parts: Uint8Array[]): Promise<string[]> {
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      for (const part of parts) controller.enqueue(part)
      controller.close()
    },
  })
  const lines: string[] = []
  for await (const line of readLines(body)) lines.push(line)
  return lines
}

it('readLines puts lines together however the body was cut, within a letter of several bytes too', async () => {
  const bytes = new TextEncoder().encode('{"a":1}\n{"b":"Olmeño"}\n\nlast')
  const whole = ['{"a":1}', '{"b":"Olmeño"}', '', 'last']
  expect(await linesOf([bytes])).toEqual(whole)
  expect(await linesOf([...bytes].map((byte) => Uint8Array.of(byte)))).toEqual(whole)
  expect(await linesOf([])).toEqual([])
})
