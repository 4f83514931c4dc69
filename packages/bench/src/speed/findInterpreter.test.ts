import { describe, expect, it } from 'vitest'
import { findInterpreter, type Interpreter } from './findInterpreter.ts'

/** Node stands in for R and Python: what is looked for is a program that ends well on the probe. */
const wanted: Interpreter = {
  variable: 'BENCH_TEST_PROGRAM',
  candidates: ['no-such-program-anywhere', process.execPath],
  probe: ['-e', 'process.stdout.write("library 1.2 ")'],
  debianPackage: 'some-package',
}

describe('findInterpreter', () => {
  it('takes the first candidate that has the library, and its version', async () => {
    expect(await findInterpreter(wanted, {})).toEqual({ program: process.execPath, version: 'library 1.2' })
  })

  it('where there is none says what to install and which variable to set', async () => {
    const failing = { ...wanted, probe: ['-e', 'process.exit(1)'] }
    expect(await findInterpreter(failing, {})).toEqual({
      missing: 'not installed; install with apt-get install some-package, or set BENCH_TEST_PROGRAM',
    })
  })

  it('does not look past a program that was named', async () => {
    const found = await findInterpreter(wanted, { BENCH_TEST_PROGRAM: 'no-such-program-anywhere' })
    expect(found).toEqual({ missing: expect.stringContaining('BENCH_TEST_PROGRAM is no-such-program-anywhere') })
  })
})
