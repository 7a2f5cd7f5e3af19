import type { TeamFile } from '@/lib/records/fold/teamFile'
import { counting } from '@/lib/records/fold/teamFile'
import type { CallbackQuestion } from '@/lib/records/view/callbacks/question'
import { candidatesOf } from '../equipment/candidates'
import { Choice } from '../ui/form/Choice'
import { Select } from '../ui/form/Select'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import { sayMonth } from '../ui/words/sayMonth'
import { type Asked, periods, usualDays } from './asked'
import styles from './callbacks.module.css'
import { definitionWords, whatIsShown } from './questionWords'

const periodWords: Readonly<Record<(typeof periods)[number], string>> = {
  '12': 'The last 12 months',
  '24': 'The last 24 months',
  '60': 'The last 5 years',
  all: 'Everything on file',
  chosen: 'From one month to another',
}

type Props = {
  asked: Asked
  question: CallbackQuestion
  /** Every month that has a case, oldest first. */
  months: readonly string[]
  file: TeamFile
  change: (part: Partial<Asked>) => void
}

/** What the figures are of, and what counts as a callback: said in words, and changed here. */
export function Question({ asked, question, months, file, change }: Props) {
  const branches = [
    ...new Set(counting(file.furnaces).flatMap(({ body }) => (body.branch ? [body.branch] : []))),
  ].sort()
  const monthOptions = months.map((value) => ({ value, words: sayMonth(value) }))
  const days = [...new Set([...usualDays, asked.days])].sort((a, b) => a - b)
  return (
    <Sheet title="What is shown">
      <p>{whatIsShown(question, file)}</p>
      <p>{definitionWords(question)}</p>
      <Quiet>
        A month is settled once its last job can no longer come back by this. Younger months are drawn open,
        and make no rate yet. Months begin and end by universal time.
      </Quiet>
      <div className={styles.question}>
        <form
          aria-label="What is shown"
          action="/callbacks"
          method="get"
          onSubmit={(event) => event.preventDefault()}
        >
          <div className={styles.fields}>
            <Select
              label="Jobs done in"
              name="period"
              options={periods.map((value) => ({ value, words: periodWords[value] }))}
              value={asked.period}
              onChange={(event) => change({ period: event.target.value as Asked['period'] })}
            />
            {asked.period === 'chosen' && (
              <>
                <Select
                  label="First month"
                  name="from"
                  options={monthOptions}
                  value={question.fromMonth}
                  onChange={(event) => change({ from: event.target.value, to: question.toMonth })}
                />
                <Select
                  label="Last month"
                  name="to"
                  options={monthOptions}
                  value={question.toMonth}
                  onChange={(event) => change({ to: event.target.value, from: question.fromMonth })}
                />
              </>
            )}
            {(branches.length > 0 || asked.branch !== '') && (
              <Select
                label="Branch"
                name="branch"
                none="All branches"
                options={branches.map((value) => ({ value, words: value }))}
                value={asked.branch}
                onChange={(event) => change({ branch: event.target.value })}
              />
            )}
            <Select
              label="Model range"
              name="range"
              none="All model ranges"
              options={candidatesOf(file, 'equipment range').map(({ id, words }) => ({ value: id, words }))}
              value={asked.range}
              onChange={(event) => change({ range: event.target.value })}
            />
            <Select
              label="It is a callback within"
              name="days"
              options={days.map((value) => ({
                value: `${value}`,
                words: value === 1 ? '1 day' : `${value} days`,
              }))}
              value={`${asked.days}`}
              onChange={(event) => change({ days: Number(event.target.value) })}
            />
          </div>
          <div className={styles.fields}>
            <Choice
              legend="Which cases count"
              name="circuit"
              options={[
                { value: 'same', words: 'The proving circuit, both times' },
                { value: 'any', words: 'Anything on the same furnace' },
              ]}
              value={asked.circuit}
              onChoose={(circuit) => change({ circuit })}
            />
            <Choice
              legend="Time to a callback in"
              name="scale"
              options={[
                { value: 'season', words: 'Heating-season days' },
                { value: 'calendar', words: 'Calendar days' },
              ]}
              value={asked.scale}
              onChoose={(scale) => change({ scale })}
            />
          </div>
        </form>
      </div>
    </Sheet>
  )
}
