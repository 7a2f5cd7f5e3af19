'use client'

import { useState } from 'react'
import { type CheckEntry, checks } from '@/lib/catalogue/checks'
import { findingGroups, findings } from '@/lib/catalogue/findings'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { Button } from '../../ui/form/Button'
import { TextField } from '../../ui/form/TextField'
import { Fold } from '../../ui/paper/Fold'
import { Sheet } from '../../ui/paper/Sheet'
import { Stack } from '../../ui/paper/Stack'
import { CheckFindings } from './CheckFindings'
import { CheckLines } from './CheckLines'
import { capitalised } from './capitalised'
import { FindingRows } from './FindingRows'
import type { CaseWork } from './useCaseWork'
import styles from './work.module.css'

type Props = { view: CaseView; work: CaseWork; mayAdd: boolean }

const tapped = findings.filter((finding) => finding.asked === 'by a person')

/** What comes before any meter, in the order of the work. */
const looks = [
  { title: 'At the door', checks: checks.filter(({ step }) => step === 'at the door') },
  { title: 'Quick looks', checks: checks.filter(({ step }) => step === 'quick looks') },
] as const

/** What was seen and ruled out, one tap each: the quick looks first, then every finding by its group. */
export function Findings(props: Props) {
  const { view, work } = props
  const [typed, setTyped] = useState('')
  const said = new Set(view.file.findings.map(({ body }) => body.finding))
  const wanted = plain(typed).split(' ').filter(Boolean)
  const matching = tapped.filter(({ name, hint = '', values, group }) => {
    const text = plain(`${name} ${hint} ${values.join(' ')} ${group}`)
    return wanted.every((word) => text.includes(word))
  })
  return (
    <Sheet
      title="What you see"
      sub="Look before you measure. One tap each; not checked is never taken for no."
    >
      <Stack>
        {work.undo !== undefined && (
          <p className={styles.undo}>
            Recorded: {work.undo.words}. <Button onClick={work.takeBack}>Undo</Button>
          </p>
        )}
        <TextField
          label="Search the findings"
          name="finding"
          type="search"
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        {wanted.length > 0 ? (
          <section aria-label="Findings that match">
            <p role="status">
              {matching.length === 0
                ? 'No finding matches. Type another word, or write it as a note when you end the visit.'
                : `${matching.length} of ${tapped.length} findings match.`}
            </p>
            <FindingRows {...props} ids={matching.map(({ id }) => id)} />
          </section>
        ) : (
          <>
            {looks.map(({ title, checks: ofStep }) => (
              <Fold
                key={title}
                summary={`${title}: ${checkedOf(
                  ofStep.flatMap(({ reveals }) => reveals),
                  said,
                )}`}
              >
                {() =>
                  ofStep.map((check) => <QuickLook key={check.id} check={check} {...props} said={said} />)
                }
              </Fold>
            ))}
            <section aria-labelledby="all-findings">
              <h3 id="all-findings">All findings, by what they are about</h3>
              {findingGroups.map((group) => {
                const ids = tapped.filter((finding) => finding.group === group).map(({ id }) => id)
                return (
                  ids.length > 0 && (
                    <Fold key={group} summary={`${capitalised(group)}: ${checkedOf(ids, said)}`}>
                      {() => <FindingRows {...props} ids={ids} />}
                    </Fold>
                  )
                )
              })}
            </section>
          </>
        )}
      </Stack>
    </Sheet>
  )
}

function QuickLook({ check, said, ...rest }: Props & { check: CheckEntry; said: ReadonlySet<string> }) {
  return (
    <Fold summary={`${check.name}: ${checkedOf(check.reveals, said)}`}>
      {() => (
        <>
          <CheckLines check={check} />
          <CheckFindings {...rest} check={check} />
        </>
      )}
    </Fold>
  )
}

const checkedOf = (ids: readonly string[], said: ReadonlySet<string>): string =>
  `${ids.filter((id) => said.has(id)).length} of ${ids.length} checked`

/** Lower case and without hyphens, so that “rollout” finds “roll-out”. */
const plain = (text: string): string => text.toLowerCase().replaceAll('-', '')
