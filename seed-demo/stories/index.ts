import type { Showing } from '../showing'
import type { Team } from '../team'
import { tellCorrections } from './corrections'
import { tellElevations } from './elevations'
import { tellField } from './field'
import { tellLevels } from './levels'
import { tellOddSwitches } from './oddSwitches'
import { tellParts } from './parts'
import { tellRequests } from './requests'
import { tellSlips } from './slips'
import { tellTags } from './tags'

/** The hand-written cases, so that every level, slip and supersession occurs for sure. */
export function tellStories(team: Team): Showing[] {
  const showings = [
    tellLevels(team),
    tellSlips(team),
    tellElevations(team),
    tellOddSwitches(team),
    tellParts(team),
    tellCorrections(team),
  ].flat()
  tellRequests(team)
  tellField(team)
  tellTags(team)
  return showings
}
