import { Button } from '../ui/form/Button'
import { Row } from '../ui/paper/Stack'
import styles from './read.module.css'

type Props = {
  /** What the field is called in this sentence. */
  what: string
  value: string
  /** What a camera read for it; empty when nothing was. */
  read: string
  onChecked: () => void
}

/** Stays beside a field for as long as it holds what a camera read and nobody has said that it was checked. */
export function CheckWhatWasRead({ what, value, read, onChecked }: Props) {
  if (read === '' || value !== read) return null
  return (
    <div role="status" className={styles.read}>
      <p>
        <b>Read from a picture: check it.</b> Hold {what} against the label, digit by digit.
      </p>
      <Row>
        <Button onClick={onChecked}>I checked it against the label</Button>
      </Row>
    </div>
  )
}
