import type { WrittenFinding } from './types'

/** When it happens, and in what weather. Asked of the people who live with it. */
export const timeAndWeatherFindings = {
  'first-call-of-the-morning': {
    name: 'On the first call of the morning',
    hint: 'After a set-back, or a night off.',
  },
  'long-runs-in-bitter-cold': { name: 'On long runs in bitter cold' },
  'in-high-wind': { name: 'In high wind' },
  'in-one-wind-direction': {
    name: 'With the wind from one direction',
    hint: 'Note the point of the compass.',
  },
  'on-calm-days-too': { name: 'On calm days too', usual: { seen: 'usually' } },
  'in-thaw-or-rain': { name: 'In thaw or rain' },
  'after-snowfall-or-drift': { name: 'After snowfall or drifting snow' },
  'first-start-of-season': { name: 'On the first start of the season' },
  'in-mild-weather-only': { name: 'In mild weather only', hint: 'Short cycles.' },
  'when-trouble-began': {
    name: 'When the trouble began',
    hint: 'Other work: roof, siding, remodelling, coil, softener, duct cleaning, an earlier repair.',
    values: ['after years without trouble', 'at installation', 'after other work'],
  },
  'again-within-30-days': { name: 'Again within 30 days of a visit' },
  'same-month-last-year': { name: 'In the same month as last year' },
  'with-other-appliances-on': { name: 'With dryer, fans or fireplace on' },
  'neighbours-alike': { name: 'Same trouble in the neighbours’ furnaces' },
} as const satisfies Record<string, WrittenFinding>
