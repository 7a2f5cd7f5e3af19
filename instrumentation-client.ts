import { config } from 'zod'

// Runs in the browser before anything else of ours. The content-security policy forbids making functions out of text;
// zod would try it once to see, and the browser would report that as a violation.
config({ jitless: true })
