import { expect, it } from 'vitest'
import { lastWords } from './lastWords.ts'

it("lastWords finds the error in Node's own crash report", () => {
  const report =
    "node:internal/modules/esm/resolve:275\n  throw new E();\n  ^\n\nError [ERR_X]: Cannot find module 'a'\n    at b (c:1:2) {\n  code: 'ERR_X'\n}\n\nNode.js v20.20.2\n"
  expect(lastWords(report)).toBe("Error [ERR_X]: Cannot find module 'a'")
})

it('lastWords is the one line of a refused command, and nothing where nothing was said', () => {
  expect(lastWords('FILE_MISSING  no such file: a.csv  Give another.\n')).toBe(
    'FILE_MISSING  no such file: a.csv  Give another.',
  )
  expect(lastWords("error: unknown command 'x'\n(try --help)\n")).toContain('try')
  expect(lastWords('\n')).toBeNull()
})
