/** How long a slice of work may hold up the screen, in milliseconds; a step begun in it is finished. */
const sliceMilliseconds = 40

const pause = (): Promise<void> => new Promise((done) => setTimeout(done))

/**
 * Does long work step by step, giving the screen a turn between slices, so that a phone goes on answering.
 * @param told is given the step that each slice ended with
 * @param isWanted is asked after every turn of the screen; once it says no, the work is dropped
 * @returns the answer of the work, or undefined when it was dropped
 */
export async function workInSlices<Step, Answer>(
  steps: Generator<Step, Answer>,
  told: (step: Step) => void,
  isWanted: () => boolean,
): Promise<Answer | undefined> {
  for (;;) {
    await pause()
    if (!isWanted()) return undefined
    const sliceEnds = performance.now() + sliceMilliseconds
    let step = steps.next()
    while (!step.done && performance.now() < sliceEnds) step = steps.next()
    if (step.done) return step.value
    told(step.value)
  }
}
