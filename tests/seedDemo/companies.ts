import { demoCompany } from '@/seed-demo/company'

const made = new Map<number, ReturnType<typeof demoCompany>>()

/** The demo company of a seed, made once for a file of tests. */
export function companyOf(seed: number): ReturnType<typeof demoCompany> {
  const known = made.get(seed) ?? demoCompany(seed)
  made.set(seed, known)
  return known
}
