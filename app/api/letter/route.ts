import { z } from 'zod'
import { monthName, monthNumber } from '@/lib/core/callbacks/month'
import { recordKinds } from '@/lib/records/registry'
import { letterFigures } from '@/lib/records/view/letter/letterFigures'
import { openSnapshot } from '@/lib/server/exchange/snapshot'
import { refuse } from '@/lib/server/http/answers'
import { whatDoesNotFit } from '@/lib/server/log/whatDoesNotFit'
import { requireRole } from '@/lib/server/people/session'
import { letterParts } from '../../callbacks/letter/letterParts'
import { letterPdf } from '../../callbacks/letter/letterPdf'

const asked = z.object({
  /** The last whole month where it is left out. */
  month: z
    .string()
    .regex(/^\d{4}-(0[1-9]|1[0-2])$/, '“month” must be a month, written 2026-01.')
    .optional(),
  /** How far the reader's clock is ahead of the universal one. */
  ahead: z
    .string()
    .regex(/^-?\d{1,3}$/, '“ahead” must be a number of minutes.')
    .transform(Number)
    .pipe(
      z
        .int()
        .min(-12 * 60, '“ahead” must be −720 or more.')
        .max(14 * 60, '“ahead” must be 840 or less.'),
    )
    .default(0),
})

/** The monthly letter as a PDF, from the log as it stands: `?month=2026-01&ahead=-420`. For managers. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request, 'manager')
  if (person instanceof Response) return person
  const { searchParams } = new URL(request.url)
  const parsed = asked.safeParse({
    month: searchParams.get('month') ?? undefined,
    ahead: searchParams.get('ahead') ?? undefined,
  })
  if (!parsed.success) return refuse(400, 'bad-month', whatDoesNotFit(parsed.error))
  const made = new Date()
  const { month = monthName(monthNumber(made.getTime()) - 1), ahead } = parsed.data
  const now = made.toISOString()
  const snapshot = openSnapshot(recordKinds)
  try {
    const { head } = snapshot
    const file = snapshot.file()
    const parts = letterParts(letterFigures(file, month, now), file, { now, head, minutesAhead: ahead })
    const pdf = await letterPdf(parts, made)
    return new Response(Buffer.from(pdf), {
      headers: {
        'content-type': 'application/pdf',
        'content-disposition': `inline; filename="inchwater-letter-${month}.pdf"`,
        'cache-control': 'no-store',
      },
    })
  } finally {
    snapshot.close()
  }
}
