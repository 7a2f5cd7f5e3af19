import type { Metadata } from 'next'
import { ReadPhotoScreen } from '../../../photo/ReadPhotoScreen'

export const metadata: Metadata = { title: 'Read a photo' }

export default function ReadPhotoPage() {
  return <ReadPhotoScreen />
}
