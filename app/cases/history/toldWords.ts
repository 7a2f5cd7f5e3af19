import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import type { ShutDownNoticeBody } from '@/lib/records/kinds/shutDownNotice'
import type { SwitchCheckBody } from '@/lib/records/kinds/switchCheck'
import { airFreeOf } from '@/lib/records/view/case/dangers'
import { authorityWords, stateWords } from '../notice/noticeWords'
import { momentWords } from './momentWords'

/** CO in the room and in the flue, each with the limit that it was held against and whose limit that is. */
export function combustionWords(body: CombustionTestBody): string {
  const { roomCoPpm, roomCoLimitPpm, flueCoPpm, oxygenPercent, flueCoLimitPpm, flueCoLimitFrom } = body
  const words = [
    ...(roomCoPpm === undefined
      ? []
      : [
          `room ${roomCoPpm} ppm, ${roomCoLimitPpm === undefined ? 'no limit typed' : `the employer’s limit ${roomCoLimitPpm} ppm`}`,
        ]),
    ...(flueCoPpm.length === 0
      ? []
      : [
          `flue ${flueCoPpm.join(', ')} ppm${
            oxygenPercent === undefined
              ? ''
              : ` at ${oxygenPercent} % oxygen, which is ${airFreeOf(body).map(Math.round).join(', ')} ppm air-free`
          }, ${flueCoLimitPpm === undefined ? 'no limit typed' : `limit ${flueCoLimitPpm} ppm (${flueCoLimitFrom})`}`,
        ]),
    ...(body.minutesRunning === undefined
      ? []
      : [
          `after ${body.minutesRunning} min of running${body.minutesAsked === undefined ? '' : `, ${body.minutesAsked} asked for`}`,
        ]),
    ...(body.meter === undefined ? [] : [`meter ${body.meter}`]),
  ]
  return `${words.join('; ')}.`
}

/** What a check of a switch itself showed. */
export function checkWords(body: SwitchCheckBody, unit: PressureUnit): string {
  const yes = (is: boolean, words: string) => (is ? words : `not ${words}`)
  switch (body.what) {
    case 'off the furnace':
      return `pulls ${body.pulls.map((pull) => (pull === 'did not close' ? pull : formatPressure(pull, unit))).join('; ')}; ten seconds: ${body.heldForTenSeconds}; pump line ${yes(body.pumpLineProvenTight, 'proven tight')}.`
    case 'at rest':
      return `contact ${body.contact}; inducer ${yes(body.inducerStopped, 'stopped')}, hose ${yes(body.hoseOff, 'off')}, wires ${yes(body.wiresOff, 'off')}.`
    case 'voltage across the closed contact':
      return `${body.volts.join(', ')} V, ${yes(body.underLoad, 'under load')}; terminals ${body.terminals}; contact ${body.contact}.`
  }
}

/** A shut-down notice as a few sentences. */
export function noticeWords(body: ShutDownNoticeBody): string {
  const told =
    body.told === undefined
      ? 'Nobody is said to have been told.'
      : `Told: ${body.told}${body.toldAt === undefined ? '' : `, ${momentWords(body.toldAt)}`}.`
  const authority =
    body.authority === undefined
      ? ''
      : ` Authority or gas supplier: ${authorityWords[body.authority].toLowerCase()}${body.authorityWho === undefined ? '' : `, ${body.authorityWho}`}.`
  const heat = body.heatAndFrost === undefined ? '' : ` Heat and frost meanwhile: ${body.heatAndFrost}.`
  return `${body.found} Not to be relit until ${body.doNotRelightUntil}. Gas ${stateWords[body.gas].toLowerCase()}, power ${stateWords[body.power].toLowerCase()}, ${body.tagged ? 'tagged' : 'not tagged'}. ${told} Written notice: ${body.writtenNotice ? 'yes' : 'no'}.${authority}${heat}`
}
