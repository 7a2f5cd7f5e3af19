import { config } from 'zod'

// The content-security policy forbids making functions out of text. zod would try it once to see whether it may, and
// the browser would report that as a breach of the policy; so in the browser it is told not to try.
config({ jitless: true })
