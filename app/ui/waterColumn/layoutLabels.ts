/** A label that wants to stand at `anchor` (its middle) and is `height` high. */
export type Label = { key: string; anchor: number; height: number }

/** The room that all labels share, and the least gap between two. */
export type Room = { top: number; bottom: number; gap: number }

/**
 * Places labels one below the other so that none overlaps another, each as near to its anchor as that allows: the
 * sum of the squared distances is the least possible. It is isotonic regression by pooling adjacent violators
 * (Ayer et al. 1955) on the anchors less the room that the labels above take up; bounds are met by clamping, which
 * keeps the optimum.
 * @returns the middle of each label, from top to bottom; equal anchors keep the order in which they came
 * @throws RangeError when the labels don't fit into the room
 */
export function layoutLabels(
  labels: readonly Label[],
  { top, bottom, gap }: Room,
): { key: string; middle: number }[] {
  const ordered = [...labels].sort((one, other) => one.anchor - other.anchor)
  let end = 0
  const offsets = ordered.map(({ height }, index) => {
    const middle = end + (index === 0 ? 0 : gap) + height / 2
    end = middle + height / 2
    return middle
  })
  const slack = bottom - top - end
  if (slack < -1e-9)
    throw new RangeError(`layoutLabels requires room for its labels, ${-slack} more is needed`)

  const pools: { sum: number; count: number }[] = []
  ordered.forEach(({ anchor }, index) => {
    pools.push({ sum: anchor - (offsets[index] ?? 0), count: 1 })
    for (
      let last = pools.at(-1), above = pools.at(-2);
      last && above;
      last = pools.at(-1), above = pools.at(-2)
    ) {
      if (above.sum / above.count <= last.sum / last.count) break
      pools.splice(-2, 2, { sum: above.sum + last.sum, count: above.count + last.count })
    }
  })
  const starts = pools.flatMap(({ sum, count }) => Array<number>(count).fill(sum / count))
  return ordered.map(({ key }, index) => {
    const start = Math.min(Math.max(starts[index] ?? top, top), top + Math.max(0, slack))
    return { key, middle: start + (offsets[index] ?? 0) }
  })
}
