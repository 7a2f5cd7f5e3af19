'use client'

import { type ReactNode, useId } from 'react'
import { Problem } from '../answers/Problem'
import { Button } from '../form/Button'
import { FieldError } from '../form/Field'
import { Row } from '../paper/Stack'
import { Quiet } from '../words/Quiet'
import { Picture } from './Picture'
import styles from './photo.module.css'
import { capturedWords } from './photoWords'
import { accepted, type TakenPhoto } from './takenPhoto'
import { usePhotoCapture } from './usePhotoCapture'

type Props = {
  /** Names the group, for instance `Photo of the label`. */
  label: string
  hint?: ReactNode
  error?: ReactNode
  /** The photo of the form, from its draft; null while there is none. */
  photo: TakenPhoto | null
  /**
   * A photo was taken and is kept on the device. Put `taken` into the form's draft, and add its `photo` record when the
   * form is saved. `blob` is the picture as it was kept, upright and shrunk, for whatever reads it.
   */
  onTake: (taken: TakenPhoto, blob: Blob) => void
  /** The photo is taken out of the form. */
  onRemove: () => void
  /** Drawn below the picture, for instance what was read off it. */
  children?: ReactNode
}

/**
 * The photo of a form: from the camera or from a file, shown before anything is saved. Whatever needs its picture takes
 * the Blob of `onTake`, or later `usePictureBlob(photo.sha256)`; see usePhotoCapture.
 */
export function PhotoField({ label, hint, error, photo, onTake, onRemove, children }: Props) {
  const id = useId()
  const { take, busy, problem } = usePhotoCapture()
  const takeFrom = async (file: File | undefined): Promise<void> => {
    const done = file && (await take(file))
    if (done !== undefined) onTake(done.taken, done.blob)
  }
  return (
    <fieldset id={id} className={styles.field} aria-describedby={hint ? `${id}-hint` : undefined}>
      <legend>{label}</legend>
      {hint && (
        <p className={styles.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {photo !== null && (
        <>
          <Picture {...photo} alt={`${label}, not saved yet`} size="large" />
          <Quiet>
            {photo.capturedAt === undefined
              ? 'The file does not say when it was taken.'
              : `Taken ${capturedWords(photo.capturedAt)}.`}{' '}
            Where it was taken is not in it.
          </Quiet>
        </>
      )}
      {photo !== null && children}
      <Row>
        <FileButton words={photo === null ? 'Take a photo' : 'Take it again'} camera onFile={takeFrom} />
        <FileButton words="Choose a picture" onFile={takeFrom} />
        {photo !== null && (
          <Button kind="quiet" onClick={onRemove}>
            Leave it out
          </Button>
        )}
      </Row>
      <p role="status">{busy ? 'Making the picture smaller …' : ''}</p>
      <Problem>{problem}</Problem>
      <FieldError of={id} label={label}>
        {error}
      </FieldError>
    </fieldset>
  )
}

type FileProps = { words: string; camera?: boolean; onFile: (file: File | undefined) => void }

/** A file input that looks like a button. On a phone `camera` opens the camera at once. */
export function FileButton({ words, camera = false, onFile }: FileProps) {
  return (
    <label className={styles.fileButton}>
      {words}
      <input
        type="file"
        accept={accepted}
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          const { currentTarget } = event
          onFile(currentTarget.files?.[0])
          // The same file can be chosen again.
          currentTarget.value = ''
        }}
      />
    </label>
  )
}
