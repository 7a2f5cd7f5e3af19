import { describe, expect, test, vi } from 'vitest'
import { openCamera } from '@/lib/device/readers/camera'

type Scope = Parameters<typeof openCamera>[0]
const scopeWith = (getUserMedia?: () => Promise<unknown>, isSecureContext = true): Scope =>
  ({
    isSecureContext,
    navigator: getUserMedia === undefined ? {} : { mediaDevices: { getUserMedia } },
  }) as unknown as Scope
const refusing = (name: string) => scopeWith(() => Promise.reject(new DOMException('no', name)))

describe('openCamera(scope)', () => {
  test('says that plain http has none, before anybody is asked', async () => {
    const ask = vi.fn()
    expect(await openCamera(scopeWith(ask, false))).toEqual({ ok: false, why: 'plain http' })
    expect(ask).not.toHaveBeenCalled()
  })

  test('says that the browser gives this page none', async () => {
    expect(await openCamera(scopeWith())).toEqual({ ok: false, why: 'not here' })
  })

  test.each([
    ['NotAllowedError', 'refused'],
    ['SecurityError', 'refused'],
    ['NotFoundError', 'no camera'],
    ['OverconstrainedError', 'no camera'],
    ['NotReadableError', 'in use'],
    ['AbortError', 'in use'],
  ])('tells a %s as: %s', async (name, why) => {
    expect(await openCamera(refusing(name))).toEqual({ ok: false, why })
  })

  test('what it has no word for is not swallowed', async () => {
    await expect(openCamera(refusing('TypeMismatchError'))).rejects.toThrow('no')
    await expect(openCamera(scopeWith(() => Promise.reject(new TypeError('bad'))))).rejects.toThrow('bad')
  })

  test('switches the torch where the camera has one, and lets go of the camera', async () => {
    const track = {
      stop: vi.fn(),
      getCapabilities: () => ({ torch: true }),
      applyConstraints: vi.fn(async () => undefined),
    }
    const stream = { getVideoTracks: () => [track], getTracks: () => [track] }
    const opened = await openCamera(scopeWith(async () => stream))
    if (!opened.ok) throw new Error(opened.why)
    await opened.torch?.(true)
    expect(track.applyConstraints).toHaveBeenCalledWith({ advanced: [{ torch: true }] })
    opened.close()
    expect(track.stop).toHaveBeenCalledOnce()
  })

  test('offers no torch where the camera does not say that it has one', async () => {
    const stream = { getVideoTracks: () => [{ stop() {} }], getTracks: () => [] }
    const opened = await openCamera(scopeWith(async () => stream))
    expect(opened).toMatchObject({ ok: true })
    expect(opened).not.toHaveProperty('torch')
  })
})
