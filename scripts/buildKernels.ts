/**
 * Makes machine code of the kernels that are written as WebAssembly text: beside each `x.wat` in science a file
 * `xBytes.ts`, which is kept in the repository so that everything runs from source. The build runs this first.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { bytesFileOf, kernels } from './kernels/bytesFileOf.ts'

for (const kernel of kernels) {
  const { path, text } = await bytesFileOf(kernel)
  if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text)
}
