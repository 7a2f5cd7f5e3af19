/** Why there is no picture from the camera. */
export type NoCamera = 'plain http' | 'no camera' | 'refused' | 'in use' | 'not here'

/** The camera that looks away from the person, switched on. */
export type OpenCamera = {
  ok: true
  stream: MediaStream
  /** Present where the camera has a torch that can be switched. */
  torch?: (on: boolean) => Promise<void>
  close(): void
}

/**
 * Switches the camera on. The browser asks the person first.
 * @param scope where it is looked for; the window in a browser
 */
export async function openCamera(
  scope: Pick<Window, 'isSecureContext' | 'navigator'>,
): Promise<OpenCamera | { ok: false; why: NoCamera }> {
  if (!scope.isSecureContext) return { ok: false, why: 'plain http' }
  // Browsers leave it out where a page may not have it.
  const devices = scope.navigator.mediaDevices as MediaDevices | undefined
  if (devices?.getUserMedia === undefined) return { ok: false, why: 'not here' }
  try {
    const stream = await devices.getUserMedia({
      audio: false,
      video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } },
    })
    const [track] = stream.getVideoTracks()
    const close = () => {
      for (const each of stream.getTracks()) each.stop()
    }
    return { ok: true, stream, close, ...torchOf(track) }
  } catch (cause) {
    const why = reasons[cause instanceof DOMException ? cause.name : '']
    if (why === undefined) throw cause
    return { ok: false, why }
  }
}

/** The names of the exceptions of getUserMedia (W3C Media Capture and Streams, 10.2). */
const reasons: Readonly<Record<string, NoCamera>> = {
  NotAllowedError: 'refused',
  SecurityError: 'refused',
  NotFoundError: 'no camera',
  OverconstrainedError: 'no camera',
  NotReadableError: 'in use',
  AbortError: 'in use',
}

/** A torch is a constraint of the track where there is one (W3C Image Capture); TypeScript's own types leave it out. */
function torchOf(track: MediaStreamTrack | undefined): Pick<OpenCamera, 'torch'> {
  const can = track?.getCapabilities?.() as { torch?: boolean } | undefined
  if (track === undefined || can?.torch !== true) return {}
  return {
    torch: (on) => track.applyConstraints({ advanced: [{ torch: on } as MediaTrackConstraintSet] }),
  }
}
