import { useState } from 'react'
import type { PersonFigure } from '@/lib/records/view/callbacks/peopleFigures'
import { IntervalMark } from '../ui/charts/IntervalMark'
import { Check } from '../ui/form/Check'
import { type Column, DataTable } from '../ui/paper/DataTable'
import { Sheet } from '../ui/paper/Sheet'
import { behindShare } from './behind'
import { CaseFigure } from './CaseFigure'
import styles from './callbacks.module.css'
import { intervalWords, outOf, perCentWords } from './figureWords'
import { OpenedCases } from './OpenedCases'
import type { SectionProps } from './section'

type Props = SectionProps & { names: ReadonlyMap<string, string> }

/** Callbacks by who ended the job, after shrinkage. Shown to managers alone. */
export function People({ figures, file, opening, names }: Props) {
  const { people, settled } = figures
  // Never kept: whoever prints next asks anew.
  const [onPaper, setOnPaper] = useState(false)
  const nameOf = ({ personId }: PersonFigure) =>
    names.get(personId) ?? 'somebody whose name is not on this device'
  const behind = new Map(
    people.map((person) => [
      person.personId,
      behindShare(`person-${person.personId}`, `Jobs ended by ${nameOf(person)}`, person.cameBack),
    ]),
  )
  const upTo = Math.max(0.1, ...people.map(({ shrunken }) => shrunken.interval[1]))
  // One person alone has nothing shared to be drawn towards: then the count is all there is to say.
  const rates: Column<PersonFigure>[] =
    people.length < 2
      ? []
      : [
          {
            key: 'rate',
            words: 'Rate, drawn towards that of all',
            cell: ({ shrunken: { rate, interval } }) =>
              `${perCentWords(rate)}, between ${intervalWords(interval)}`,
          },
          {
            key: 'picture',
            words: 'Against all together',
            cell: ({ personId, shrunken: { rate, interval } }) => (
              <CaseFigure of={behind.get(personId)!} opening={opening} says={`${perCentWords(rate)}`}>
                <IntervalMark
                  share={rate}
                  interval={interval}
                  upTo={upTo}
                  centre={settled.count / settled.of}
                />
              </CaseFigure>
            ),
          },
        ]
  return (
    <div className={onPaper ? undefined : styles.notOnPaper}>
      <Sheet
        title="People"
        sub="For managers alone. By who ended the job, in the order of the number of jobs."
      >
        <div className={styles.notOnPaper}>
          <Check
            name="people-on-paper"
            label="Print people’s figures too"
            hint="Off, this sheet stays on the screen: paper is read by more than managers."
            checked={onPaper}
            onChange={({ target }) => setOnPaper(target.checked)}
          />
        </div>
        <p>
          Chance explains most differences between people: whoever does few jobs, or gets the hard ones, has
          more callbacks some years and fewer in others.{' '}
          {people.length < 2
            ? 'With fewer than two people there is nothing to compare, and no rate is said.'
            : 'So each rate is drawn towards that of all, the more the fewer jobs are behind it.'}{' '}
          Use it to ask, never to judge.
        </p>
        {differs(people, settled.of === 0 ? 0 : settled.count / settled.of)}
        <DataTable
          caption="Jobs that came back, by who ended them"
          rowKey={({ personId }) => personId}
          rows={people}
          columns={[
            { key: 'person', words: 'Person', cell: nameOf },
            {
              key: 'back',
              words: 'Came back',
              cell: (person) => (
                <CaseFigure of={behind.get(person.personId)!} opening={opening} says={outOf(person.cameBack)}>
                  {outOf(person.cameBack)}
                </CaseFigure>
              ),
            },
            ...rates,
          ]}
          empty={<p>No job of a settled month in this time.</p>}
        />
        <OpenedCases
          of={[...behind.values()]}
          open={opening.open}
          file={file}
          callbacks={figures.callbacks}
        />
      </Sheet>
    </div>
  )
}

/** Whether anybody's interval leaves the share of all together out. */
function differs(people: readonly PersonFigure[], centre: number) {
  if (people.length < 2) return null
  const apart = people.filter(({ shrunken: { interval } }) => interval[0] > centre || interval[1] < centre)
  return (
    <p>
      {apart.length === 0
        ? 'Nobody differs from all together by more than chance makes.'
        : `${apart.length === 1 ? 'One person differs' : `${apart.length} people differ`} from all together by more than chance easily makes. Ask first what kind of jobs they were.`}
    </p>
  )
}
