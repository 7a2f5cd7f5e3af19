import styles from './danger.module.css'
import { type DangerGroup, leaveNow, shutDown } from './dangerWords'

/** What stops the work, on one sheet: the steps first and large, the signs below them. Needs no data and no script. */
export function DangerSteps({ heading = 2 }: { heading?: 2 | 3 }) {
  return (
    <div className={styles.steps}>
      <Group group={leaveNow} heading={heading} first />
      <Group group={shutDown} heading={heading} />
      <p>
        Before you go in: a CO meter that you carry, switched on. The maker’s instructions, local codes and a
        licensed person’s judgement come before anything on this sheet.
      </p>
    </div>
  )
}

function Group({ group, heading, first }: { group: DangerGroup; heading: 2 | 3; first?: boolean }) {
  const Heading = heading === 2 ? 'h2' : 'h3'
  return (
    <section className={first ? styles.first : styles.second} aria-labelledby={`danger-${group.key}`}>
      <Heading id={`danger-${group.key}`}>{group.title}</Heading>
      <p className={styles.when}>{first ? 'If any one of these is so:' : 'If you find any one of these:'}</p>
      <ul>
        {group.signs.map((sign) => (
          <li key={sign}>{sign}</li>
        ))}
      </ul>
      <ol>
        {group.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </section>
  )
}
