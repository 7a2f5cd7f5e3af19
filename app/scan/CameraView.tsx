'use client'

import { useEffect, useRef, useState } from 'react'
import type { NoCamera } from '@/lib/device/readers/camera'
import type { ReadCode } from '@/lib/device/readers/codes'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import styles from './scan.module.css'
import { type Watching, watchCamera } from './watchCamera'

type Props = { onRead(codes: readonly ReadCode[]): void }

/** What the camera sees, until it has read a code. It is off as soon as this is no longer shown. */
export function CameraView({ onRead }: Props) {
  const [tries, setTries] = useState(1)
  return <Viewfinder key={tries} onRead={onRead} onAgain={() => setTries(tries + 1)} />
}

/** One try with the camera. */
function Viewfinder({ onRead, onAgain }: Props & { onAgain(): void }) {
  const video = useRef<HTMLVideoElement>(null)
  const [now, setNow] = useState<Watching>({ is: 'opening' })
  useEffect(() => watchCamera(video.current!, { onChange: setNow, onRead }), [onRead])
  const off = now.is === 'no camera' || now.is === 'trouble'
  const torch = now.is === 'looking' ? now.torch : undefined
  return (
    <div className={styles.camera}>
      <video
        ref={video}
        className={styles.video}
        hidden={off}
        muted
        playsInline
        aria-label="What the camera sees"
      />
      <p role="status" className={styles.seeing}>
        {now.is === 'opening' && 'Opening the camera. The browser may ask whether it may.'}
        {now.is === 'looking' && 'Hold the code in the picture, a hand’s width away. It is read by itself.'}
      </p>
      {now.is === 'no camera' && <Problem>{noCameraWords[now.why]}</Problem>}
      {now.is === 'trouble' && (
        <Problem>
          The camera’s picture could not be read ({now.because}). Without a signal the code reader works once
          it has been used here with one. Try again, or type what is printed.
        </Problem>
      )}
      {off && (
        <Button onClick={onAgain} kind="quiet">
          Try the camera again
        </Button>
      )}
      {torch !== undefined && <Torch torch={torch} />}
    </div>
  )
}

/** The camera's light, which a phone may refuse all the same: when it is hot, or its battery is low. */
function Torch({ torch }: { torch(on: boolean): Promise<void> }) {
  const [lit, setLit] = useState(false)
  const [refused, setRefused] = useState(false)
  const turn = async (): Promise<void> => {
    const done = await torch(!lit).then(
      () => true,
      (cause) => {
        console.info('The camera’s light was not switched:', cause)
        return false
      },
    )
    setRefused(!done)
    if (done) setLit(!lit)
  }
  return (
    <>
      <Button aria-pressed={lit} onClick={() => void turn()}>
        {lit ? 'Torch off' : 'Torch on'}
      </Button>
      {refused && (
        <Problem>
          {lit
            ? 'This camera’s light could not be switched off. It goes out when you leave this page.'
            : 'This camera’s light could not be switched on. Use another light, or type what is printed.'}
        </Problem>
      )}
    </>
  )
}

const noCameraWords: Readonly<Record<NoCamera, string>> = {
  'plain http':
    'No camera here: browsers give it to https addresses only, and this address is plain http. Ask whoever runs the server for https. Meanwhile choose a picture or type what is printed.',
  'no camera': 'This device has no camera. Choose a picture, or type what is printed.',
  refused:
    'The camera was refused. Allow it for this address in the browser’s settings, then try again. Or choose a picture, or type what is printed.',
  'in use':
    'Another program holds the camera. Close it and try again. Or choose a picture, or type what is printed.',
  'not here': 'This browser gives pages no camera. Choose a picture, or type what is printed.',
}
