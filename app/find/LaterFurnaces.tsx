'use client'

import { lazy, Suspense } from 'react'

/**
 * The furnaces of today, loaded once the field can be typed into: judging their cases takes as much program as all the
 * rest of Find, and nobody waits for it to look up a number.
 */
const Furnaces = lazy(() =>
  import('./TodaysFurnaces').then(
    ({ TodaysFurnaces }) => ({ default: TodaysFurnaces }),
    () => ({ default: NotLoaded }),
  ),
)

export const LaterFurnaces = () => (
  <Suspense>
    <Furnaces />
  </Suspense>
)

const NotLoaded = () => (
  <p role="alert">
    Today’s furnaces could not be loaded, because the server was not reached. Find works without them. Reload
    when there is a signal, or open <a href="/cases">the cases</a>.
  </p>
)
