import { openLabelReader } from '../labels/labelReader'
import { openCodeReader } from './codes'

/**
 * Has the readers of codes and labels fetched now, so that the service worker keeps them: each is started once, which
 * fetches just the files that this browser needs.
 * @throws Error when they cannot be fetched
 */
export async function keepReaders(): Promise<void> {
  const codes = await openCodeReader()
  try {
    await codes.read(new ImageData(8, 8))
  } finally {
    codes.close()
  }
  const labels = await openLabelReader()
  await labels.close()
}
