import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { EquipmentRangeBody } from '@/lib/records/kinds/equipmentRange'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import type { PartBody } from '@/lib/records/kinds/part'
import { partsByPosition } from '@/lib/records/view/findEntries'
import { openPattern } from './modelPatterns'
import { partClassNames } from './partClassWords'

/** One record that can be picked: how it is called, and the texts it is found by. */
export type Candidate = { id: string; words: string; hint?: string; texts: readonly string[] }

/** The kinds of record of which two can name one thing. */
export const joinableKinds = ['maker', 'equipment range', 'position', 'part', 'furnace', 'gauge'] as const
export type JoinableKind = (typeof joinableKinds)[number]

const byWords = (one: Candidate, other: Candidate): number => one.words.localeCompare(other.words, 'en')

export const rangeWords = (file: TeamFile, range: Entry<EquipmentRangeBody>): string =>
  [file.makers.get(file.keptId(range.body.makerId))?.body.name, range.body.name].filter(Boolean).join(' ')

const partWords = (part: Entry<PartBody>): string => part.body.partNumber

export const furnaceWords = ({ body }: Entry<FurnaceBody>): string =>
  `${body.siteLabel}: ${body.model}${body.serial === undefined ? '' : `, serial ${body.serial}`}`

const candidatesBy: Readonly<Record<JoinableKind, (file: TeamFile) => Candidate[]>> = {
  maker: (file) =>
    counting(file.makers).map(({ id, body }) => ({ id, words: body.name, texts: [body.name] })),
  'equipment range': (file) =>
    counting(file.ranges).map((range) => ({
      id: range.id,
      words: rangeWords(file, range),
      hint: range.body.modelPatterns.join(' · '),
      texts: [...range.body.modelPatterns.map(openPattern), rangeWords(file, range)],
    })),
  position: (file) => {
    const parts = partsByPosition(file)
    return counting(file.positions).map(({ id, body }) => {
      const range = file.ranges.get(file.keptId(body.rangeId))
      const words = `${body.name}, ${range === undefined ? '' : rangeWords(file, range)}`
      const patterns = range?.body.modelPatterns.map(openPattern) ?? []
      return { id, words, texts: [words, ...patterns, ...(parts.get(id) ?? []).map(partWords)] }
    })
  },
  part: (file) =>
    counting(file.parts).map((part) => ({
      id: part.id,
      words: partWords(part),
      hint: [partClassNames[part.body.class], part.body.listedIn].filter(Boolean).join(', '),
      texts: [part.body.partNumber],
    })),
  furnace: (file) =>
    counting(file.furnaces).map((furnace) => ({
      id: furnace.id,
      words: furnaceWords(furnace),
      texts: [furnace.body.siteLabel, furnace.body.model, furnace.body.serial ?? ''].filter(Boolean),
    })),
  gauge: (file) =>
    counting(file.gauges).map(({ id, body }) => ({ id, words: body.name, texts: [body.name] })),
}

/** Every record of a kind that counts, in the order of its name. */
export const candidatesOf = (file: TeamFile, kind: JoinableKind): Candidate[] =>
  candidatesBy[kind](file).toSorted(byWords)
