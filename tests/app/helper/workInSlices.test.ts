import { expect, test } from 'vitest'
import { workInSlices } from '@/app/helper/workInSlices'

function* slowSteps(howMany: number): Generator<number, string> {
  for (let step = 0; step < howMany; step++) {
    const until = performance.now() + 15
    while (performance.now() < until);
    yield step
  }
  return 'done'
}

test('workInSlices(steps, told, isWanted) answers what the work answers, and tells how far it is between slices', async () => {
  const told: number[] = []
  expect(
    await workInSlices(
      slowSteps(12),
      (step) => told.push(step),
      () => true,
    ),
  ).toBe('done')
  expect(told.length).toBeGreaterThan(1)
  expect(told).toEqual(told.toSorted((one, other) => one - other))
})

test('other work gets its turn between slices', async () => {
  let turns = 0
  const timer = setInterval(() => turns++, 1)
  await workInSlices(
    slowSteps(12),
    () => {},
    () => true,
  )
  clearInterval(timer)
  expect(turns).toBeGreaterThan(1)
})

test('what is no longer wanted is dropped, before it begins or between slices', async () => {
  let begun = 0
  function* counted(): Generator<number, string> {
    for (;;) {
      begun++
      yield* slowSteps(1)
    }
  }
  expect(
    await workInSlices(
      counted(),
      () => {},
      () => false,
    ),
  ).toBeUndefined()
  expect(begun).toBe(0)
  let turns = 0
  expect(
    await workInSlices(
      counted(),
      () => {},
      () => ++turns < 3,
    ),
  ).toBeUndefined()
  expect(begun).toBeGreaterThan(1)
})

test('an error of the work is the caller’s', async () => {
  function* broken(): Generator<number, string> {
    yield 1
    throw new RangeError('no such finding')
  }
  await expect(
    workInSlices(
      broken(),
      () => {},
      () => true,
    ),
  ).rejects.toThrow('no such finding')
})
