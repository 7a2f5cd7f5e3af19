'use client'

import { Choice } from '../../ui/form/Choice'

/** A record on file that what is being typed may be a double of. */
export type Twin = { id: string; words: string; href: string }

/** `another`: no double. `again <id>`: the same thing, recorded anew. `replaces <id>`: it takes that one's place. */
type TwinAnswer = string

/** The id that an answer of the given sort names, if that record is still among the doubles. */
export function twinNamed(
  sort: 'again' | 'replaces',
  answer: TwinAnswer,
  twins: readonly Twin[],
): string | undefined {
  return twins.find(({ id }) => answer === `${sort} ${id}`)?.id
}

/** Whether doubles are pointed out and nobody has said yet what they are. */
export const isTwinOpen = (answer: TwinAnswer, twins: readonly Twin[]): boolean =>
  twins.length > 0 &&
  answer !== 'another' &&
  twinNamed('again', answer, twins) === undefined &&
  twinNamed('replaces', answer, twins) === undefined

export const twinGap = 'This reads the same as what is on file. Say whether it is the same thing.'

type Props = {
  /** What it is a record of, for instance `part`. */
  what: string
  twins: readonly Twin[]
  answer: TwinAnswer
  onAnswer: (answer: TwinAnswer) => void
  error?: string
  /** Offers that the new one takes the place of the one on file, with what that means; undefined where it can't. */
  replaces?: (twin: Twin) => { words: string; hint: string } | undefined
}

/** Points out, before anything is saved, what on file reads the same, and asks what it is. */
export function TwinQuestion({ what, twins, answer, onAnswer, error, replaces }: Props) {
  if (twins.length === 0) return null
  const replacing = (twin: Twin) => {
    const option = replaces?.(twin)
    return option === undefined ? [] : [{ value: `replaces ${twin.id}`, ...option }]
  }
  return (
    <div>
      <div role="status">
        <p>On file already, and it reads the same:</p>
        <ul>
          {twins.map((twin) => (
            <li key={twin.id}>
              <a href={twin.href}>{twin.words}</a>
            </li>
          ))}
        </ul>
      </div>
      <Choice
        legend={`Is it the same ${what}?`}
        name="twin"
        error={error}
        value={isTwinOpen(answer, twins) ? null : answer}
        onChoose={onAnswer}
        options={[
          ...twins.flatMap((twin) => [
            ...replacing(twin),
            {
              value: `again ${twin.id}`,
              words: `The same ${what} as ${twin.words}, recorded anew`,
              hint: 'You are taken to join the two, keeping this one.',
            },
          ]),
          { value: 'another', words: `Another ${what}` },
        ]}
      />
    </div>
  )
}

/** Where to go once a double is saved anew: to the form that joins the two. */
export const joinHref = (kind: string, kept: string, duplicate: string): string =>
  `/equipment/join?${new URLSearchParams({ kind, kept, duplicate })}`
