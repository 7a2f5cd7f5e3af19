import { coverWords, elevationWords } from '@/lib/records/view/coverWords'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { heightWords } from '../furnace/heightWords'
import { furnaceOf, type SetpointAddress } from './setpointAddress'
import styles from './setpointCard.module.css'

type Props = { setpoint: Setpoint; address: SetpointAddress }

/** In the place of numbers where none is on file for this furnace: for which others one is, and what to do meanwhile. */
export function NothingOnFile({ setpoint, address }: Props) {
  const { file } = useDeviceState()
  const { elevationMetres } = furnaceOf(file, address)
  const openRequests = setpoint.openRequests.length
  const only = onlyWords(setpoint.elsewhere, elevationMetres)
  return (
    <div className={styles.standing}>
      <p className={styles.nothing}>{only ?? 'No rating is on file for this switch.'}</p>
      {only !== undefined && (
        <p>
          {elevationMetres !== undefined && `This furnace stands at ${heightWords(elevationMetres)}. `}
          None is on file for it, and none is carried over from another.
        </p>
      )}
      <p>
        {openRequests > 0
          ? 'Somebody has asked for it; the answer will appear here.'
          : 'Ask for it now, so that it is being looked for while you work.'}{' '}
        Nothing can be compared until then, and nothing is guessed.
      </p>
      <p>Work that needs no rating, meanwhile:</p>
      <ol>
        <li>Outside: are the vent end and the intake clear?</li>
        <li>Power off: does the vent pipe fall back to the furnace all the way, with no sag?</li>
        <li>Power off, hose off the switch first: are hose and port clear, dry and whole?</li>
        <li>Power off, eyes covered: does water run freely through trap and drain?</li>
        <li>Photograph the data plate and the switch, every character.</li>
      </ol>
    </div>
  )
}

/** For which furnaces something is on file, where it is for others only; undefined where nothing is. */
function onlyWords(elsewhere: Setpoint['elsewhere'], metres: number | undefined): string | undefined {
  if (elsewhere.length === 0) return undefined
  const bands = elsewhere.map(({ body: { elevationBand } }) => {
    const { fromMetres = Number.NEGATIVE_INFINITY, toMetres = Number.POSITIVE_INFINITY } = elevationBand ?? {}
    const isOut = metres !== undefined && (metres < fromMetres || metres > toMetres)
    return isOut && elevationBand !== undefined ? elevationWords(elevationBand) : undefined
  })
  const words = bands.every((band) => band !== undefined)
    ? bands
    : elsewhere.map(({ body }) => `for other furnaces: ${coverWords(body)}`)
  return `On file only ${[...new Set(words)].join(', and ')}.`
}
