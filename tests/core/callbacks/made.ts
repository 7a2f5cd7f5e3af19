import fc from 'fast-check'
import type { Lifetimes } from '@/lib/core/callbacks'
import { deepFreeze } from '../diagnosis/anyDiagnosis'

export const anyLifetimes: fc.Arbitrary<Lifetimes> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 50 }), fc.boolean()), { minLength: 1, maxLength: 40 })
  .map((pairs) => deepFreeze({ times: pairs.map(([time]) => time), events: pairs.map(([, event]) => event) }))
