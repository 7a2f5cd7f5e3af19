import { timeAndWeatherFindings } from '@/lib/catalogue/findings/timeAndWeather'
import type { Seasons } from '@/lib/records/view/reports/seasons'
import { Empty } from '../../ui/answers/Empty'
import { DataTable } from '../../ui/paper/DataTable'
import { countOf } from '../countOf'
import { monthsOfYear } from '../monthWords'
import { shareWords } from '../shareWords'
import { Report } from './Report'

/** When in the year the trouble comes, and in what weather it is said to come. */
export const SeasonReport = ({ seasons: { months, weather, writtenIds, cases } }: { seasons: Seasons }) => (
  <Report
    title="Season and weather"
    means="Cases about the proving circuit by the month in which they were opened, all years of the period together; and how often trouble was said to come with a kind of weather, of the cases in which anybody said yes or no to it. Measured wind, snow and temperature are not recorded."
  >
    <DataTable
      caption="Cases opened, by month of the year"
      rows={cases === 0 ? [] : months}
      rowKey={({ month }) => String(month)}
      columns={[
        { key: 'month', words: 'Month', cell: ({ month }) => monthsOfYear[month - 1] },
        { key: 'cases', words: 'Cases', numeric: true, cell: ({ caseIds }) => caseIds.length },
      ]}
      empty={
        <Empty
          what="No case in this period"
          why="No case about the proving circuit was opened in it."
          todo="Choose a longer period."
        />
      }
    />
    {cases > 0 && (
      <>
        <DataTable
          caption="Trouble said to come with the weather"
          rows={weather}
          rowKey={({ finding }) => finding}
          columns={[
            {
              key: 'weather',
              words: 'Weather',
              cell: ({ finding }) =>
                timeAndWeatherFindings[finding as keyof typeof timeAndWeatherFindings].name,
            },
            {
              key: 'seen',
              words: 'Said so, of those asked',
              numeric: true,
              cell: ({ seenIds, asked }) => shareWords({ count: seenIds.length, of: asked }),
            },
          ]}
          empty={null}
        />
        <p>
          The weather of the day was written down in {writtenIds.length} of {countOf(cases, 'case')}, in
          somebody’s own words; that is not counted here.
        </p>
      </>
    )}
  </Report>
)
