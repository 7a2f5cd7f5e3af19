import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Label, layoutLabels } from '@/app/ui/waterColumn/layoutLabels'

const fixed = { seed: 20260112 }
const room = { top: 0, bottom: 400, gap: 4 }
const someLabels = fc
  .array(
    fc.record({ anchor: fc.integer({ min: -50, max: 450 }), height: fc.integer({ min: 10, max: 45 }) }),
    {
      maxLength: 7,
    },
  )
  .map((labels) => Object.freeze(labels.map((label, index) => Object.freeze({ ...label, key: `${index}` }))))

const heightOf = (labels: readonly Label[], key: string) =>
  labels.find((label) => label.key === key)?.height ?? 0

test('layoutLabels leaves labels at their anchors when they have room', () => {
  const labels = [
    { key: 'closes', anchor: 100, height: 30 },
    { key: 'opens', anchor: 140, height: 30 },
  ]
  expect(layoutLabels(labels, room)).toEqual([
    { key: 'closes', middle: 100 },
    { key: 'opens', middle: 140 },
  ])
})

test('layoutLabels moves two that want the same place apart by half each', () => {
  const labels = [
    { key: 'first', anchor: 200, height: 30 },
    { key: 'second', anchor: 200, height: 30 },
  ]
  expect(layoutLabels(labels, room)).toEqual([
    { key: 'first', middle: 183 },
    { key: 'second', middle: 217 },
  ])
})

test('layoutLabels keeps labels within the room', () => {
  const labels = [
    { key: 'high', anchor: -20, height: 20 },
    { key: 'low', anchor: 500, height: 20 },
  ]
  expect(layoutLabels(labels, room)).toEqual([
    { key: 'high', middle: 10 },
    { key: 'low', middle: 390 },
  ])
})

test('layoutLabels of nothing is nothing', () => {
  expect(layoutLabels([], room)).toEqual([])
})

test('layoutLabels never lets two overlap nor leave the room, whatever they want', () => {
  fc.assert(
    fc.property(someLabels, (labels) => {
      const places = layoutLabels(labels, room)
      let end = room.top - room.gap
      for (const { key, middle } of places) {
        const half = heightOf(labels, key) / 2
        expect(middle - half).toBeGreaterThanOrEqual(end + room.gap - 1e-9)
        end = middle + half
      }
      expect(end).toBeLessThanOrEqual(room.bottom + 1e-9)
    }),
    fixed,
  )
})

test('layoutLabels stays as near to the anchors as the min-max formula of isotonic regression', () => {
  // Robertson, Wright, Dykstra, Order Restricted Statistical Inference (1988), theorem 1.4.4, quoted from memory:
  // fit(i) = max over s <= i of min over t >= i of the mean of y(s..t). Another way than pooling.
  fc.assert(
    fc.property(someLabels, (labels) => {
      const ordered = [...labels].sort((one, other) => one.anchor - other.anchor)
      const offsets = ordered.map(
        ({ height }, at) =>
          ordered.slice(0, at).reduce((sum, above) => sum + above.height + room.gap, 0) + height / 2,
      )
      const wants = ordered.map(({ anchor }, at) => anchor - (offsets[at] ?? 0))
      const mean = (from: number, to: number) =>
        wants.slice(from, to + 1).reduce((sum, want) => sum + want, 0) / (to - from + 1)
      const indices = wants.map((_, at) => at)
      const all =
        ordered.reduce((sum, { height }) => sum + height, 0) + Math.max(0, ordered.length - 1) * room.gap
      const expected = indices.map((at) => {
        const fit = Math.max(
          ...indices
            .filter((from) => from <= at)
            .map((from) => Math.min(...indices.filter((to) => to >= at).map((to) => mean(from, to)))),
        )
        return Math.min(Math.max(fit, room.top), room.bottom - all) + (offsets[at] ?? 0)
      })
      const places = layoutLabels(labels, room).map(({ middle }) => middle)
      expect(places).toHaveLength(expected.length)
      for (const [at, middle] of places.entries()) expect(middle).toBeCloseTo(expected[at] ?? Number.NaN, 8)
    }),
    fixed,
  )
})

test('layoutLabels throws a RangeError that says how much room is missing', () => {
  const labels = [
    { key: 'one', anchor: 10, height: 30 },
    { key: 'two', anchor: 10, height: 30 },
  ]
  expect(() => layoutLabels(labels, { top: 0, bottom: 60, gap: 4 })).toThrow(
    new RangeError('layoutLabels requires room for its labels, 4 more is needed'),
  )
})
