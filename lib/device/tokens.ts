import '@/lib/records/withoutEval'
import { z } from 'zod'
import { roles } from '@/lib/records/roles'
import { type Called, call } from './transport'

const token = z.object({
  id: z.string(),
  name: z.string(),
  role: z.enum(roles),
  madeBy: z.string(),
  madeAt: z.string(),
  expiresAt: z.string(),
  lastUsedAt: z.string().nullable(),
  state: z.enum(['works', 'has ended', 'was ended', 'taken off']),
})

/** A token of an office program, without its secret. */
export type ListedToken = z.infer<typeof token>

export const fetchTokens = (): Promise<Called<ListedToken[]>> => call('/api/tokens', z.array(token))
