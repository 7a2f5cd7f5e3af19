import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CallbackFigures } from '@/lib/records/view/callbacks/callbackFigures'
import type { MarkLink } from '../ui/charts/mark'
import type { Behind, Opening } from './behind'
import { openInPlace } from './openInPlace'

/** What every section of the screen is given. */
export type SectionProps = { figures: CallbackFigures; file: TeamFile; opening: Opening }

/** How a mark of a picture opens the cases behind it. */
export const linkOf = ({ key }: Behind, opening: Opening): MarkLink => ({
  href: opening.hrefOf(key),
  isOpen: opening.open === key,
  onClick: (event) => openInPlace(event, key, opening),
})
