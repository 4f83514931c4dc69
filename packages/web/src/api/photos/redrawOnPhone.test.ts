import { expect, it } from 'vitest'
import { sizeWithin } from './redrawOnPhone.ts'

it('a picture keeps its shape and is never made larger', () => {
  expect(sizeWithin(4000, 3000, 1600)).toEqual({ widthPx: 1600, heightPx: 1200 })
  expect(sizeWithin(3000, 4000, 1600)).toEqual({ widthPx: 1200, heightPx: 1600 })
  expect(sizeWithin(640, 481, 1600)).toEqual({ widthPx: 640, heightPx: 481 })
  expect(sizeWithin(9000, 2, 1600)).toEqual({ widthPx: 1600, heightPx: 1 })
})
