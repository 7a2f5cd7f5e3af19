import type { Metadata } from 'next'
import { PhotoScreen } from '../../photo/PhotoScreen'

export const metadata: Metadata = { title: 'Photo' }

export default function PhotoPage() {
  return <PhotoScreen />
}
