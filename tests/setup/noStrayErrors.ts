import { afterEach, beforeEach, expect, vi } from 'vitest'

// A stray console.error or console.warn is trouble that nobody looked at, so it fails the test.
beforeEach(() => {
  vi.spyOn(console, 'error')
  vi.spyOn(console, 'warn')
})

afterEach(() => {
  expect(vi.mocked(console.error).mock.calls, 'console.error was called').toEqual([])
  expect(vi.mocked(console.warn).mock.calls, 'console.warn was called').toEqual([])
  vi.restoreAllMocks()
})
