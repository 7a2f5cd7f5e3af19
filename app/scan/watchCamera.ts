import { type NoCamera, openCamera } from '@/lib/device/readers/camera'
import { type CodeReader, openCodeReader, type ReadCode } from '@/lib/device/readers/codes'
import { pixelsOf } from '@/lib/device/readers/pixels'

/** What the camera is doing. */
export type Watching =
  | { is: 'opening' }
  | { is: 'looking'; torch?: (on: boolean) => Promise<void> }
  | { is: 'no camera'; why: NoCamera }
  | { is: 'trouble'; because: string }

type Told = {
  onChange(now: Watching): void
  /** Called with what stood in two pictures running: one blurred picture alone can be misread. */
  onRead(codes: readonly ReadCode[]): void
}

/** How long between two pictures, in milliseconds: the processor has to rest too. */
const restMs = 120
const longestSide = 1280

/** Shows what the camera sees in a video, and reads it until it is told to stop or a code was read. */
export function watchCamera(video: HTMLVideoElement, { onChange, onRead }: Told): () => void {
  let stopped = false
  let camera: { close(): void } | undefined
  let reader: CodeReader | undefined
  let timer: ReturnType<typeof setTimeout> | undefined

  function stop(): void {
    stopped = true
    clearTimeout(timer)
    reader?.close()
    camera?.close()
  }

  async function begin(): Promise<void> {
    onChange({ is: 'opening' })
    const opened = await openCamera(window)
    if (!opened.ok) return stopped ? undefined : onChange({ is: 'no camera', why: opened.why })
    camera = opened
    if (stopped) return opened.close()
    video.srcObject = opened.stream
    await video.play()
    const opening = await openCodeReader()
    reader = opening
    if (stopped) return opening.close()
    onChange({ is: 'looking', ...(opened.torch === undefined ? {} : { torch: opened.torch }) })
    look(opening, [])
  }

  function look(codes: CodeReader, before: readonly string[]): void {
    timer = setTimeout(() => {
      void lookOnce(codes, before).catch(fail)
    }, restMs)
  }

  async function lookOnce(codes: CodeReader, before: readonly string[]): Promise<void> {
    const size = { width: video.videoWidth, height: video.videoHeight }
    const read = size.width === 0 ? [] : await codes.read(pixelsOf(video, size, longestSide))
    if (stopped) return
    const twice = read.filter(({ text }) => before.includes(text))
    if (twice.length === 0)
      return look(
        codes,
        read.map(({ text }) => text),
      )
    stop()
    onRead(twice)
  }

  const fail = (cause: unknown): void => {
    if (stopped) return
    stop()
    onChange({ is: 'trouble', because: cause instanceof Error ? cause.message : String(cause) })
  }
  begin().catch(fail)
  return stop
}
