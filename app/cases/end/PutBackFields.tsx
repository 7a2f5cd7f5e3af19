'use client'

import { putBackItems } from '@/lib/records/putBackItems'
import { Choice } from '../../ui/form/Choice'
import type { EndForm } from './endForm'
import { putBackWords } from './endingWords'

type Props = { putBack: EndForm['putBack']; change: (part: Partial<EndForm>) => void }

const answers = [
  { value: 'not yet', words: 'Not yet' },
  { value: 'done', words: 'Done' },
  { value: 'nothing', words: 'Nothing to put back here' },
] as const

/** Everything that has to be back before anybody leaves: each item is done, or there was nothing to put back. */
export const PutBackFields = ({ putBack, change }: Props) => (
  <section aria-labelledby="end-putBack">
    <h2 id="end-putBack">Put back</h2>
    {putBackItems.map((item) => (
      <Choice
        key={item}
        legend={putBackWords[item]}
        name={`putBack ${item}`}
        options={answers}
        value={putBack[item] ?? 'not yet'}
        onChoose={(answer) =>
          change({ putBack: { ...putBack, [item]: answer === 'not yet' ? undefined : answer } })
        }
      />
    ))}
  </section>
)
