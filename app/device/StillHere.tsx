'use client'

import { type ReactNode, useEffect } from 'react'
import { Empty } from '../ui/answers/Empty'
import { useDeviceState } from './deviceContext'
import { forgetPerson } from './whoIsHere'

/** Shows the pages while the person's session on this device stands; what becomes of the device once a manager ended it. */
export function StillHere({ children }: { children: ReactNode }) {
  const { me, ended, waiting, refused } = useDeviceState()
  useEffect(() => {
    if (ended === 'emptied') forgetPerson(localStorage, me.id)
  }, [ended, me.id])
  if (ended === undefined) return children
  const left = waiting.length + refused.length
  return (
    <div role="status">
      {ended !== 'handing over' ? (
        <Empty
          page
          what="A manager has signed this device out"
          why="What waited here is with the managers now, who decide about it. The team file is gone from this device, and so is what was typed and not added."
          todo={
            ended === 'emptied' ? (
              <p>
                <a href="/sign-in">Sign in</a> to begin again. <a href="/danger">The danger sheet</a> needs no
                sign-in.
              </p>
            ) : (
              <p>The server is told so as soon as it can be reached. Keep this page open until then.</p>
            )
          }
        />
      ) : (
        <Empty
          page
          what="A manager has signed this device out"
          why={`${left === 1 ? '1 record that waits' : `${left} records that wait`} here ${left === 1 ? 'is' : 'are'} handed to the managers. Then the team file is taken off this device.`}
          todo={<p>Keep this page open. It goes on by itself, also after a break.</p>}
        />
      )}
    </div>
  )
}
