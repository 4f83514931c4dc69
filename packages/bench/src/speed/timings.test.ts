import { describe, expect, it } from 'vitest'
import { median, ownTiming, wordTimings } from './timings.ts'

const run = { seconds: 9, cpuSeconds: 8, peakMb: 7, failure: null, stdout: 'plain 0.41 0.39 \nleft 6.5e-1 6.25\n' }

describe('timings', () => {
  it('median is the middle figure, or the mean of the two middle ones, whatever the order', () => {
    expect(median([5, 1, 3])).toBe(3)
    expect(median([8, 1, 2, 4])).toBe(3)
  })

  it('words several runs as median and range by the clock, and the median of processor time', () => {
    const timings = [
      { seconds: 12.34, cpuSeconds: 9 },
      { seconds: 11, cpuSeconds: 7 },
      { seconds: 19, cpuSeconds: 8 },
    ]
    expect(wordTimings(timings)).toBe('12.3 s (11.0 to 19.0), 8.00 s of processor')
    expect(wordTimings([{ seconds: 301.7, cpuSeconds: null }])).toBe('302 s')
  })

  it('reads what a reference program measured of itself, and says so when it measured nothing', () => {
    expect(ownTiming(run, 'left')).toEqual({ seconds: 0.65, cpuSeconds: 6.25 })
    expect(() => ownTiming({ ...run, stdout: '', failure: 'no package called sp' }, 'left')).toThrow(
      'no package called sp',
    )
    expect(() => ownTiming(run, 'weights')).toThrow('weights')
  })
})
