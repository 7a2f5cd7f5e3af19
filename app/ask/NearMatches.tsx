import { stageWords } from '@/lib/catalogue/switchKinds'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { codeWords, elevationWords } from '@/lib/records/view/coverWords'
import type { Difference, NearMatch } from '@/lib/records/view/desk/nearMatches'
import { rangeWords } from '../equipment/candidates'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'

type Props = { near: readonly NearMatch[]; file: TeamFile }

/** What is on file and near, by what differs. No number stands here: none of them is the one that is asked for. */
export function NearMatches({ near, file }: Props) {
  if (near.length === 0) return null
  return (
    <Sheet title="Near it on file" sub="None is carried over. Open one to see its number with its sources.">
      <ul>
        {near.map(({ position, differs }) => {
          const range = file.ranges.get(file.keptId(position.body.rangeId))
          return (
            <li key={position.id}>
              <a href={`/setpoint?position=${position.id}`}>
                {position.body.name}, {range && rangeWords(file, range)}
              </a>{' '}
              <Quiet inline>
                {differs.length === 0
                  ? 'nothing differs by what you typed: look whether it is yours'
                  : `differs in ${differs.map(differenceWords).join('; ')}`}
              </Quiet>
            </li>
          )
        })}
      </ul>
    </Sheet>
  )
}

function differenceWords(difference: Difference): string {
  switch (difference.what) {
    case 'stage':
      return `stage (${stageWords[difference.there]})`
    case 'switch':
      return `switch (${difference.there})`
    case 'size':
      return `size (${difference.there})`
    case 'revision':
      return codeWords('revision', difference.there)
    case 'elevation':
      return `elevation (${elevationWords(difference.there)})`
  }
}
