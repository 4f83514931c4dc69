import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { bytesFileOf, kernels } from './kernels/bytesFileOf.ts'

describe('machine code of kernels', () => {
  it.each(kernels)('%s: the bytes that are kept are those of the text', async (kernel) => {
    const { path, text } = await bytesFileOf(kernel)
    expect(readFileSync(path, 'utf8')).toBe(text)
  })
})
