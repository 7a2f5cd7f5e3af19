import { store } from '@/lib/server/people/store'
import { loadDemo } from '@/seed-demo/load'

// A program of its own, so that the database is closed for good before the server opens it.
await loadDemo(process.argv[2]!)
await store().close()
