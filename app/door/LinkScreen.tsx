'use client'

import '@/lib/records/withoutEval'
import { useEffect, useState } from 'react'
import { z } from 'zod'
import { Empty } from '../ui/answers/Empty'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { NewPasswordForm } from './NewPasswordForm'
import { post } from './post'

const seen = z.object({ purpose: z.enum(['invitation', 'reset']), name: z.string(), expiresAt: z.string() })

type Looked = 'looking' | { token: string; link: z.infer<typeof seen> } | { problem: string }

/** A one-time link: an invitation to the team, or a new password. The secret stays behind the # of its address. */
export function LinkScreen() {
  const [looked, setLooked] = useState<Looked>('looking')

  useEffect(() => {
    const token = location.hash.slice(1)
    post('/api/people/links', { token }).then((posted) => {
      const link = posted.ok ? seen.safeParse(posted.value) : undefined
      if (link?.success) return setLooked({ token, link: link.data })
      setLooked({ problem: posted.ok ? 'The server’s answer could not be read.' : posted.problem.message })
    })
  }, [])

  if (looked === 'looking') return <p role="status">Looking at the link …</p>
  if ('problem' in looked) {
    return (
      <Empty
        page
        what="This link can’t be used"
        why={looked.problem}
        todo={<a href="/sign-in">Go to the sign-in</a>}
      />
    )
  }
  const { token, link } = looked
  return (
    <Stack>
      <PageHeader
        title={link.purpose === 'invitation' ? `Welcome, ${link.name}` : `A new password for ${link.name}`}
        lead={
          link.purpose === 'invitation'
            ? 'Choose a password and you are on the team.'
            : 'It replaces the old one and signs out every other device of yours.'
        }
      />
      <NewPasswordForm
        path={link.purpose === 'invitation' ? '/api/people/invitations/accept' : '/api/people/resets/use'}
        known={{ token }}
        button={link.purpose === 'invitation' ? 'Join, and sign in' : 'Set it, and sign in'}
      />
    </Stack>
  )
}
