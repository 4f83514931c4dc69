import type { YardPlan } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import { newHistory, stepHistory } from './planHistory.ts'
import { drawnObstacle, emptyPlan, freshId, moved, plainLot, samePlan, withCornerAt, without } from './planItems.ts'

describe('a plan that is drawn', () => {
  it('is the same in whatever order its parts were written', () => {
    const gauge = { rimM: 0.6, at: { yM: 9, xM: 10 }, hasWindShield: false }
    expect(
      samePlan(plainLot, {
        gauge,
        slopeDeg: null,
        hazards: [],
        obstacles: plainLot.obstacles,
        outline: plainLot.outline,
      }),
    ).toBe(true)
    expect(samePlan(plainLot, { ...plainLot, slopeDeg: 3 })).toBe(false)
  })

  it('a house moves with its ridge, and a corner alone', () => {
    const chosen = { kind: 'obstacle', id: 'house' } as const
    const east = moved(plainLot, chosen, 2, -1).obstacles[0]!.shape
    const before = plainLot.obstacles[0]!.shape
    if (east.form !== 'gable' || before.form !== 'gable') throw new Error('no house')
    expect(east.ridge[0]).toEqual({ xM: before.ridge[0].xM + 2, yM: before.ridge[0].yM - 1 })
    const pulled = withCornerAt(plainLot, chosen, 1, { xM: 19, yM: 20 }).obstacles[0]!.shape
    expect(pulled.form === 'gable' && pulled.ring[1]).toEqual({ xM: 19, yM: 20 })
    expect(moved(plainLot, { kind: 'gauge' }, 0.5, 0.25).gauge?.at).toEqual({ xM: 10.5, yM: 9.25 })
  })

  it('a tree drawn by its edge is round, a fence stays a line; ids are their own', () => {
    const tree = drawnObstacle('t', 'tree', [
      { xM: 0, yM: 0 },
      { xM: 4, yM: 0 },
    ])
    expect(tree.shape).toMatchObject({ form: 'round', center: { xM: 2, yM: 0 }, radiusM: 2 })
    expect(
      drawnObstacle('f', 'fence', [
        { xM: 0, yM: 0 },
        { xM: 4, yM: 1 },
      ]).shape,
    ).toMatchObject({ form: 'line' })
    expect(freshId({ ...plainLot, obstacles: [{ ...plainLot.obstacles[0]!, id: 'item 2' }] })).toBe('item 3')
    expect(without(plainLot, { kind: 'obstacle', id: 'house' }).obstacles).toEqual([])
  })

  it('every step is taken back, a drag as one', () => {
    const at = (xM: number): YardPlan => ({ ...plainLot, gauge: { ...plainLot.gauge!, at: { xM, yM: 1 } } })
    let history = newHistory(emptyPlan)
    history = stepHistory(history, { kind: 'set', plan: plainLot })
    for (const xM of [1, 2, 3]) history = stepHistory(history, { kind: 'set', plan: at(xM), stroke: 'drag' })
    history = stepHistory(history, { kind: 'end stroke' })
    history = stepHistory(history, { kind: 'undo' })
    expect(history.plan).toBe(plainLot)
    history = stepHistory(history, { kind: 'redo' })
    expect(history.plan.gauge?.at.xM).toBe(3)
    history = stepHistory(stepHistory(stepHistory(history, { kind: 'undo' }), { kind: 'undo' }), { kind: 'undo' })
    expect(history.plan).toBe(emptyPlan)
  })
})
