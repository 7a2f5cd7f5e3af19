'use client'

import { useState } from 'react'
import { classNames } from '../classNames'
import styles from './photo.module.css'
import { usePicture } from './usePicture'

type Props = {
  sha256: string
  width: number
  height: number
  /** What is to be seen, for whoever can't see it. */
  alt: string
  size: 'small' | 'large'
}

/** A picture, or in plain words why it is not to be seen here. */
export function Picture({ sha256, width, height, alt, size }: Props) {
  const { state, address } = usePicture(sha256, size)
  const [failed, setFailed] = useState<string>()
  if (address === undefined || failed === address) {
    return (
      <span className={classNames(styles.noPicture, styles[size])}>
        {missingWords[wordsFor(state, failed)]}
      </span>
    )
  }
  return (
    <img
      className={classNames(styles.picture, styles[size])}
      src={address}
      alt={alt}
      width={width}
      height={height}
      loading={size === 'small' ? 'lazy' : 'eager'}
      decoding="async"
      onError={() => setFailed(address)}
    />
  )
}

const wordsFor = (state: ReturnType<typeof usePicture>['state'], failed: string | undefined) =>
  state === 'held' ? (failed === undefined ? 'loading' : 'no signal') : state

/** Each says what, and what to do or wait for. */
const missingWords = {
  withheld: 'Picture withheld',
  'not here yet': 'Picture not here yet',
  'no signal': 'Picture needs a signal',
  loading: 'Picture …',
} as const
