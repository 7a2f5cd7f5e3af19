import { expect, test } from 'vitest'
import { openLabelReader } from '@/lib/device/labels/labelReader'

test('openLabelReader(places) fails with a reason when the letters’ data cannot be fetched', {
  timeout: 60_000,
}, async () => {
  await expect(openLabelReader({ langPath: 'node_modules/no-such-folder' })).rejects.toThrow(/no-such-folder/)
})
