import { afterEach, beforeEach, expect, vi } from 'vitest'

// A stray console.error or console.warn is trouble that nobody looked at, so it fails the test.
beforeEach(() => {
  vi.spyOn(console, 'error')
  vi.spyOn(console, 'warn')
})

afterEach(() => {
  const errors = vi.mocked(console.error).mock.calls
  const warnings = vi.mocked(console.warn).mock.calls
  vi.restoreAllMocks()
  expect(errors, 'console.error was called').toEqual([])
  expect(warnings, 'console.warn was called').toEqual([])
})
