import { seededRandom } from '@/lib/core/seeded'
import type { CaseShowing } from '../showing'
import { tellToldCases } from '../stories/cases'
import { tellWarranty } from '../stories/cases/warranty'
import type { Team } from '../team'
import { drawCases } from './drawCases'
import { openHouses } from './houses'
import { openRatingsThen } from './ratingsThen'
import { tellServices } from './services'
import { weatherBook } from './weather'

/**
 * Tells the demo's cases of four winters and the start of a fifth. What really stops the furnaces is written down in
 * truth/, in numbers that take nothing from the catalogue's own, and differs from them in these ways:
 * - each branch has base rates of its own: snow and ice stop the furnaces of Upper Vennet, hard water those of
 *   Quarlfoot, one batch of inducer wheels those of Dunmarrow; the switch is guilty half as often as the trade says;
 * - causes come with the weather (first cold snap, bitter cold, snow, thaw, gale), single families have weak spots,
 *   and a third of the furnaces have a weakness of their own;
 * - findings are seen more or less often with a cause than the trade says, and usual in healthy furnaces at other
 *   rates; some come in company, which a helper that takes them as independent counts twice;
 * - the weather puts findings into people's mouths, whatever stopped the furnace;
 * - no technician looks at everything: what is looked at depends on who is there and on what is suspected; findings
 *   are overlooked and imagined; one case in eight has a contributing cause; the wrong cause is named in one of
 *   seven, and now and then even proven;
 * - a first repair that was wrong, or took away only the consequence, brings the same trouble back.
 * Readings come from a furnace's own healthy pressures and what the faults leave of them.
 */
export function tellCases(team: Team, seed: number): CaseShowing[] {
  const houses = openHouses(team, seededRandom(seed))
  const weather = weatherBook(seed + 1)
  const first = Date.parse(weather.Quarlfoot[0]!.on)
  const telling = {
    team,
    random: seededRandom(seed + 2),
    ratings: openRatingsThen(team),
    weatherOn: (branch: keyof typeof weather, on: string) =>
      weather[branch][Math.round((Date.parse(on) - first) / 86_400_000)]!,
  }
  tellServices({ ...telling, random: seededRandom(seed + 3) }, houses)
  drawCases(telling, houses)
  const showings = tellToldCases({ ...telling, random: seededRandom(seed + 4) })
  tellWarranty(team)
  return showings
}
