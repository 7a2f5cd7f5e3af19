import { store } from '@/lib/server/people/store'
import { demoRecords, demoSeed } from '@/seed-demo/company'
import { loadDemo } from '@/seed-demo/load'
import { smallerDemo } from './smallerDemo'

// A program of its own, so that the database is closed for good before the server opens it.
await loadDemo(process.argv[2]!, console.log, smallerDemo(demoRecords(demoSeed)))
await store().close()
