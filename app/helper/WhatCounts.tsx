import { Sheet } from '../ui/paper/Sheet'

/** What the figures count and what they leave out. */
export function WhatCounts({ scored, proven, onFile }: { scored: number; proven: number; onFile: number }) {
  return (
    <Sheet title="What is counted">
      <ul>
        <li>
          Only cases that ended as repaired and proven, nothing missing: {proven} of the {onFile} on this
          device. Of these, {scored} are counted above; the first winter’s only served to choose how the
          helper weighs.
        </li>
        <li>
          Each case is judged as if it were new: from what was on record before it was opened, and from what
          was found in it before anybody named a cause.
        </li>
        <li>The main cause is what it had to name. A contributing one is not counted.</li>
        <li>
          A cause that was proven can still be the wrong one. Then a miss is counted that was none, or a hit
          that was none.
        </li>
        <li>
          None of this proves anything about the furnace in front of you: the test that confirms a cause does.
        </li>
      </ul>
    </Sheet>
  )
}
