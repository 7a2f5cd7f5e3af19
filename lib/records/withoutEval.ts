import { config } from 'zod'

// The content-security policy forbids making functions out of text. zod tries it when the first schema is made, to see
// whether it may, and the browser would report that as a breach; so in a browser it is told beforehand not to try.
if (typeof window !== 'undefined') config({ jitless: true })
