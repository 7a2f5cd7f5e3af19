import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { TagStanding } from '@/lib/records/view/tags'
import { furnaceWords } from '../equipment/candidates'
import { leadingBack } from '../equipment/form/returnTo'
import { answering, type ScanAddress } from '../scan/scanAddress'
import { ButtonLink } from '../ui/form/Button'
import { Row } from '../ui/paper/Stack'

type Props = { code: string; standing: TagStanding; address: ScanAddress; file: TeamFile }

/** Where a tag that was read leads: to its furnace, or to the question which furnace it is on. */
export function TagLinks({ code, standing, address: { back, furnaceId }, file }: Props) {
  if (standing.is !== 'on a furnace') {
    const here = furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(furnaceId))
    const page = `/t?c=${code}${here === undefined ? '' : `&furnace=${here.id}`}`
    return (
      <>
        <p>{words[standing.is]}</p>
        <ButtonLink kind="main" href={back?.wants === 'furnace' ? leadingBack(page, back.to) : page}>
          {standing.is === 'on none yet' ? 'Say which furnace it is on' : 'See the tag'}
        </ButtonLink>
      </>
    )
  }
  const { furnace } = standing
  return (
    <Row>
      {back?.wants === 'furnace' && (
        <ButtonLink kind="main" href={answering(back.to, 'on', furnace.id)}>
          Take {furnaceWords(furnace)}
        </ButtonLink>
      )}
      <ButtonLink kind={back?.wants === 'furnace' ? 'quiet' : 'main'} href={`/furnace?id=${furnace.id}`}>
        Furnace: {furnaceWords(furnace)}
      </ButtonLink>
    </Row>
  )
}

const words = {
  'on none yet': 'This furnace tag is on no furnace yet.',
  'on two furnaces': 'This furnace tag was recorded on two furnaces. Somebody has to say which is right.',
  withdrawn: 'This furnace tag was withdrawn: it leads to no furnace any more.',
} as const
