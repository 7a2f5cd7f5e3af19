import type { FindIndex } from '@/lib/core/find'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import { furnaceWords } from '../equipment/candidates'
import { namesOf, readsTheSame } from '../equipment/form/readsTheSame'
import type { Twin } from '../equipment/form/TwinQuestion'

/** The site labels and serial numbers on file, made ready for `furnaceTwins`. */
type FurnaceNames = { sites: FindIndex; serials: FindIndex }

export function furnaceNamesOf(file: TeamFile): FurnaceNames {
  const furnaces = counting(file.furnaces)
  return {
    sites: namesOf(furnaces.map(({ id, body }) => ({ id, text: body.siteLabel }))),
    serials: namesOf(furnaces.flatMap(({ id, body }) => (body.serial ? [{ id, text: body.serial }] : []))),
  }
}

type FurnaceTwin = Twin & {
  /** It stands under the same label and its serial is not the one typed, so it may be the one that went out. */
  mayBeReplaced: boolean
}

/** Furnaces on file under the site label that is typed, or with the serial number that is typed. */
export function furnaceTwins(
  file: TeamFile,
  names: FurnaceNames,
  typed: { siteLabel: string; serial: string },
): FurnaceTwin[] {
  const atSite = readsTheSame(names.sites, typed.siteLabel)
  const withSerial = readsTheSame(names.serials, typed.serial)
  return [...new Set([...withSerial, ...atSite])].flatMap((id) => {
    const furnace = file.furnaces.get(id)
    if (furnace === undefined) return []
    return [
      {
        id,
        words: furnaceWords(furnace),
        href: `/furnace?id=${id}`,
        mayBeReplaced: atSite.includes(id) && !withSerial.includes(id),
      },
    ]
  })
}
