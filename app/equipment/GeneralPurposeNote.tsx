import styles from './equipment.module.css'
import { generalPurposeIsRightToRecord, generalPurposeMeaning } from './partClassWords'

/** What recording a general-purpose switch means, and what to do where one is in a furnace now. */
export const GeneralPurposeNote = () => (
  <div className={styles.danger} role="status">
    <p>{generalPurposeMeaning}</p>
    <p>{generalPurposeIsRightToRecord}</p>
    <p>
      Is one in a furnace now? <a href="/found-fitted">Record it as found fitted, when and by whom</a>; also
      when it was us.
    </p>
  </div>
)
