import { refuseCrossOrigin } from '@/lib/server/http/sameOrigin'
import { signOut } from '@/lib/server/people/signOut'

/** Ends this browser's session. */
export async function POST(request: Request): Promise<Response> {
  return refuseCrossOrigin(request) ?? (await signOut(request))
}
