import type { SourceKind } from '@/lib/core/vocabulary'
import { positionNamed } from './catalogue'
import { pick } from './drawing'
import { toldRightly, toldWrongly } from './mistakes'
import { type DistributorKey, distributors, partsListings } from './names'
import type { PersonKey } from './people'
import { places } from './positions'
import { isOwnNumber } from './ratings'
import type { Report } from './reports'
import type { Team, Which } from './team'
import { counter, label, page, support, type Told } from './tell'
import { dictatedClose, inches, type SwitchPoints } from './writing'

/** What one telling starts from: a position in one elevation band and revision, a day, and the truth. */
export type Scene = Which & {
  team: Team
  random: () => number
  at: string
  on: string
  points: SwitchPoints
  /** The switch most often taken for this one. */
  sister: SwitchPoints | undefined
  noteFor: (source: SourceKind) => string | undefined
  /** Only the close point is told: one report and not two. */
  closeOnly: boolean
}

/** How often a number is told with a mistake: over the telephone, and where it has no chain at all. */
const mistakenByTelephone = 0.2
const mistakenWithoutChain = 0.3

/** The old binder was typed in within the first weeks. */
const binderDays = ['2022-09-20', '2022-09-21', '2022-09-23', '2022-09-26', '2022-10-03'] as const

const atDesk = ({ random }: Scene): PersonKey => pick(random, ['piet', 'dunja'] as const)
const inField = ({ random }: Scene): PersonKey => pick(random, ['ott', 'sunniva', 'tobin', 'lale'] as const)

const told = (scene: Scene, by: PersonKey, source: SourceKind): Told => {
  const { at, on, band, revision, noteFor } = scene
  return { at, on, by, band, revision, note: noteFor(source) }
}

const numbersIn = ({ random, points, sister }: Scene, mistaken: number) =>
  random() < mistaken ? toldWrongly(random, points, sister) : toldRightly(points)

const ifCloseOnly = ({ closeOnly, points }: Scene) =>
  closeOnly ? { says: dictatedClose(inches(points.make)) } : {}

/** One number from a source without a chain, by elevation at best. */
function lead(
  scene: Scene,
  by: PersonKey,
  source: SourceKind,
  says: (close: string) => string,
  more: Partial<Report> = {},
): void {
  const { team, at, band = 0 } = scene
  const { close } = numbersIn(scene, mistakenWithoutChain)
  const covers = { elevation: team.band(at, band) }
  team.report({ ...told(scene, by, source), says: says(close), source, covers, ...more })
}

/** Ways in which a rating becomes known. Each adds one or two reports. */
export const tellings = {
  page: (scene) =>
    page(scene.team, { ...told(scene, atDesk(scene), 'current literature'), ...ifCloseOnly(scene) }),
  label: (scene) =>
    label(scene.team, { ...told(scene, inField(scene), 'factory switch label'), ...ifCloseOnly(scene) }),
  support: (scene) =>
    support(scene.team, {
      ...told(scene, atDesk(scene), 'factory support'),
      reference: `S-${1000 + Math.floor(scene.random() * 9000)}`,
      ...ifCloseOnly(scene),
    }),
  counter: (scene) => {
    const { random, team, closeOnly } = scene
    const { close, open } = numbersIn(scene, mistakenByTelephone)
    const readBack = random() < 0.6
    counter(team, {
      ...told(scene, atDesk(scene), 'distributor'),
      says: closeOnly ? dictatedClose(close) : `closes at ${close}, opens at ${open} in. w.c.`,
      readBack,
      reference: readBack ? `C-${100 + Math.floor(random() * 900)}` : undefined,
      distributor: pick(random, Object.keys(distributors) as DistributorKey[]),
    })
  },
  binder: (scene) =>
    lead(scene, 'ragna', 'imported', (close) => `${close} close`, { on: pick(scene.random, binderDays) }),
  remembered: (scene) => lead(scene, inField(scene), 'remembered', (close) => `closes ${close}`),
  listing: (scene) =>
    lead(scene, atDesk(scene), 'parts listing', (close) => `${close} in. w.c.`, {
      saidBy: pick(scene.random, partsListings),
    }),
  bench: (scene) => {
    const { team, random, points, at } = scene
    const pulled = [-1, 1, 2].map((off) => points.make + off).filter(isOwnNumber)
    const says = `closes ${inches(pick(random, pulled))} in. w.c.`
    const { sense } = places[positionNamed(at).place]
    lead(scene, inField(scene), 'bench check', () => says, { sense, gaugeId: team.gaugeId('G-01 yellow') })
  },
} satisfies Readonly<Record<string, (scene: Scene) => void>>

export type Telling = keyof typeof tellings
