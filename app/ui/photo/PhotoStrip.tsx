'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { PhotoBody } from '@/lib/records/kinds/photo'
import { useDeviceState } from '../../device/deviceContext'
import { sayDate } from '../words/sayDate'
import { Picture } from './Picture'
import styles from './photo.module.css'
import { showsWords } from './photoWords'

type Props = { photos: readonly Entry<PhotoBody>[]; label: string }

/** Photos as small pictures in a row, each opening large. Nothing where there is none. */
export function PhotoStrip({ photos, label }: Props) {
  const { names } = useDeviceState()
  if (photos.length === 0) return null
  return (
    <ul className={styles.strip} aria-label={label}>
      {photos.map((photo) => (
        <li key={photo.id}>
          <a href={`/photo?id=${photo.id}`}>
            <Picture {...photo.body} alt="" size="small" />
            <span>{photo.body.caption ?? showsWords[photo.body.shows]}</span>
            <span>
              {sayDate(photo.at)}, {names.get(photo.by) ?? 'somebody'}
              {photo.waiting ? ', waiting to be sent' : ''}
            </span>
          </a>
        </li>
      ))}
    </ul>
  )
}
