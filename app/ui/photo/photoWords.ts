import type { PhotoShows } from '@/lib/records/kinds/photo'
import { sayMoment } from '../words/sayDate'

/** What a photo shows, in the words of the screens. */
export const showsWords: Readonly<Record<PhotoShows, string>> = {
  'rating label': 'Rating label',
  'data plate': 'Data plate',
  gauge: 'Gauge',
  'document page': 'Page of a document',
  other: 'Something else',
}

/** What the camera says: its clock may be wrong, so whose clock it is is said. */
export const capturedWords = (capturedAt: string): string => `${sayMoment(capturedAt)} by the camera’s clock`
