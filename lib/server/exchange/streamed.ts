import { setImmediate as nextTurn } from 'node:timers/promises'

/**
 * Pieces as the body of an answer, each made when the one before it was taken: however long the whole is, little of
 * it is in memory.
 *
 * @param ended is called once, when all is sent or nobody takes any more
 */
export function streamed(
  pieces: Generator<string | Uint8Array>,
  ended: () => void,
): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder()
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      await nextTurn()
      try {
        const next = pieces.next()
        if (!next.done)
          return controller.enqueue(typeof next.value === 'string' ? encoder.encode(next.value) : next.value)
      } catch (cause) {
        ended()
        throw cause
      }
      ended()
      controller.close()
    },
    cancel() {
      pieces.return(undefined)
      ended()
    },
  })
}
