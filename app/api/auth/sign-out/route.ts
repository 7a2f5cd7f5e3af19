import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { sessionsChanged } from '@/lib/server/live/live'
import { signOut } from '@/lib/server/people/signOut'

/** Ends this browser's session. */
export async function POST(request: Request): Promise<Response> {
  const refused = refuseCrossOrigin(request)
  if (refused) return refused
  const signedOut = await signOut(request)
  await sessionsChanged()
  return signedOut
}
