import { writeRoute } from '@/lib/server/http/writeRoute'
import { answerPasswordChange, passwordChangeForm } from '@/lib/server/people/ownPassword'

/** Changes one's own password; every other browser is signed out. Takes { current, password }. */
export const POST = writeRoute({ form: passwordChangeForm }, (typed, person, _id, request) =>
  answerPasswordChange(request, person, typed),
)
