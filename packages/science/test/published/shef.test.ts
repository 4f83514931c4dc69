/** Examples of [SHEF2012] and what they must decode to. The last two are our own lines in the manual's grammar. */
import { decodeShef, formatInstant } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'

/** The manual is of July 2012: years that are not written are those nearest to it. */
const nowUtcMs = Date.UTC(2012, 6, 5)

function said(text: string) {
  const { values, problems, lines } = decodeShef(text, { nowUtcMs })
  const rows = values.map(({ location, code, datum, observedAtUtcMs }) => [
    location,
    code,
    datum.kind === 'number' ? datum.value : datum.kind,
    formatInstant(observedAtUtcMs),
  ])
  return { rows, problems, lines, values }
}

describe('examples of the SHEF code manual', () => {
  it('.A: one station, a day ending at 08:00 Central', () => {
    expect(said('.A EGTM7 1120 C DH08/HG 5.75/QR 5.97/PP 2.15\n')).toMatchObject({
      rows: [
        ['EGTM7', 'HGIRZZZ', 5.75, '2012-11-20T14:00:00Z'],
        ['EGTM7', 'QRIRZZZ', 5.97, '2012-11-20T14:00:00Z'],
        ['EGTM7', 'PPDRZZZ', 2.15, '2012-11-20T14:00:00Z'],
      ],
      problems: [],
    })
  })

  it('.B: a table in which values are missing, or not reported', () => {
    const at = '2012-01-07T16:30:00Z'
    expect(said('.B GEG 0107 P DH0830/SD/SF/TX/XW\nSQAW1 0/0/+/04\nSPAW1 //38/02\n.END\n')).toMatchObject({
      rows: [
        ['SQAW1', 'SDIRZZZ', 0, at],
        ['SQAW1', 'SFDRZZZ', 0, at],
        ['SQAW1', 'TAIRZXZ', 'missing', at],
        ['SQAW1', 'XWIRZZZ', 4, at],
        ['SPAW1', 'TAIRZXZ', 38, at],
        ['SPAW1', 'XWIRZZZ', 2, at],
      ],
      problems: [],
      lines: ['frame', 'values', 'values', 'frame'],
    })
  })

  it('.E: five days, the second and the fourth missing', () => {
    expect(said('.E WGLM8 1201 M DH06/PP/DID1/1.20/+/3.00/+/.55\n')).toMatchObject({
      rows: [
        ['WGLM8', 'PPDRZZZ', 1.2, '2012-12-01T13:00:00Z'],
        ['WGLM8', 'PPDRZZZ', 'missing', '2012-12-02T13:00:00Z'],
        ['WGLM8', 'PPDRZZZ', 3, '2012-12-03T13:00:00Z'],
        ['WGLM8', 'PPDRZZZ', 'missing', '2012-12-04T13:00:00Z'],
        ['WGLM8', 'PPDRZZZ', 0.55, '2012-12-05T13:00:00Z'],
      ],
      problems: [],
    })
  })

  it('PY and PPP: the day to 07:00, and from 07:00 to the time of reading', () => {
    const { rows, values, problems } = said('.B FTW 0107 C DH13/PY/PPP\nSRGT2 .25/1.75\n.END\n')
    expect(problems).toEqual([])
    expect(rows).toEqual([
      ['SRGT2', 'PPDRZZZ', 0.25, '2012-01-07T13:00:00Z'],
      ['SRGT2', 'PPPRZZZ', 1.75, '2012-01-07T19:00:00Z'],
    ])
    expect(formatInstant(values[1]?.sinceUtcMs ?? 0)).toBe('2012-01-07T13:00:00Z')
  })

  it('a total over three days', () => {
    const { values } = said('.A ABCD1 0612 C DH07/DVD3/PPV 0.62\n')
    expect(values).toMatchObject([{ code: 'PPVRZZZ', variable: { unit: 'D', count: 3 }, datum: { value: 0.62 } }])
  })

  it('an unnamed place, a trace, and zeros', () => {
    expect(said('.A X3080995 0612 C DH07/PP T/SF 0.0/SD 0\n')).toMatchObject({
      rows: [
        ['X3080995', 'PPDRZZZ', 'trace', '2012-06-12T12:00:00Z'],
        ['X3080995', 'SFDRZZZ', 0, '2012-06-12T12:00:00Z'],
        ['X3080995', 'SDIRZZZ', 0, '2012-06-12T12:00:00Z'],
      ],
      problems: [],
    })
  })

  it('.AR: the value that replaces an earlier one', () => {
    expect(said('.AR ABCD1 0612 C DH07/PP 0.38\n').values).toMatchObject([{ isRevision: true, datum: { value: 0.38 } }])
  })
})
