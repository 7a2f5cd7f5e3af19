import { foundFittedOffer } from '@/lib/core/guard'
import { foundFittedHref, type KnownSwitch } from './foundFittedAddress'

/** What to do where something is refused that may never be fitted: record that it is in, or ask for the right part. */
export function InsteadOfFitting({ known }: { known: KnownSwitch }) {
  const { furnaceId, positionId } = known
  const query = new URLSearchParams({
    ...(positionId ? { position: positionId } : {}),
    ...(furnaceId ? { furnace: furnaceId } : {}),
  })
  return (
    <>
      <a href={foundFittedHref(known)}>{foundFittedOffer}</a>{' '}
      <a href={`/ask?${query}`}>Ask which part and rating is right</a>
    </>
  )
}
