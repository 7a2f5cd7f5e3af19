import { answer } from '../http/answers'
import { isSecure } from '../http/origin'
import { authFor } from './store'

/** Ends the session of this browser and takes its cookie. It is no error when there was none. */
export async function signOut(request: Request): Promise<Response> {
  const { headers } = await authFor(isSecure(request.headers, request.url)).api.signOut({
    headers: new Headers({ cookie: request.headers.get('cookie') ?? '' }),
    returnHeaders: true,
  })
  const signedOut = answer(true)
  for (const cookie of headers.getSetCookie()) signedOut.headers.append('set-cookie', cookie)
  return signedOut
}
