/** One kernel's WebAssembly text turned into a module of TypeScript that holds its bytes. */
import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import openWabt from 'wabt'
import { repositoryRoot } from '../repositoryRoot.ts'

/** Paths without their ending, from the root of the repository. */
export const kernels = ['packages/science/src/krige/simdSystem'] as const

/** @throws {Error} with line and column, where the text is not valid */
export async function bytesFileOf(kernel: string): Promise<{ path: string; text: string }> {
  const name = basename(kernel)
  const bytes = await bytesOf(`${kernel}.wat`)
  const text = `/** ${name}.wat as machine code. Made by scripts/buildKernels.ts: change that text, not this one. */
export const ${name}Bytes = new Uint8Array([
${filledLines([...bytes]).join('\n')}
])
`
  return { path: join(repositoryRoot, `${kernel}Bytes.ts`), text }
}

async function bytesOf(source: string): Promise<Uint8Array> {
  const wabt = await openWabt()
  const module = wabt.parseWat(source, readFileSync(join(repositoryRoot, source), 'utf8'), { simd: true })
  try {
    module.validate()
    return module.toBinary({}).buffer
  } finally {
    module.destroy()
  }
}

/** As the formatter would have it: as many numbers to a line as its width holds. */
function filledLines(numbers: readonly number[]): string[] {
  const lines: string[] = []
  let line = ' '
  for (const number of numbers) {
    const next = ` ${number},`
    if (line.length + next.length > 120) {
      lines.push(line)
      line = ' '
    }
    line += next
  }
  return [...lines, line]
}
