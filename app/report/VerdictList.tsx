import { actionWords } from '../ui/words/actionWords'
import type { Verdict } from './verdicts'

const names: Readonly<Record<Verdict['what'], string>> = {
  new: 'New.',
  agrees: 'Agrees.',
  disputes: 'Disputes.',
  sides: 'Takes a side.',
  weaker: 'Outweighed.',
  slip: 'A slip?',
  order: 'Look again.',
  lead: 'A lead.',
}

/**
 * What a number means beside what is on file, with the question to ask back while somebody can still be asked. Where
 * one text states two numbers, each verdict says which it is of.
 */
export function VerdictList({ verdicts }: { verdicts: readonly Verdict[] }) {
  const several = new Set(verdicts.map(({ action }) => action)).size > 1
  return verdicts.map(({ action, what, words, askBack }) => (
    <div key={`${action} ${words}`}>
      <p>
        {several && action !== undefined && `${actionWords[action].name}: `}
        <b>{names[what]}</b> {words}
      </p>
      {askBack !== undefined && <p>Ask back: “{askBack}”</p>}
    </div>
  ))
}
