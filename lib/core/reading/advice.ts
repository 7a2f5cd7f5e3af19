/** The state the furnace has to be in while the advice is carried out. */
export type AdviceState = 'power off' | 'gas off, inducer only' | 'running' | 'outside' | 'at rest'

type Advice = { sentence: string; state: AdviceState }

/**
 * Everything a comparison can advise, in the order in which it is given: danger, then what makes the reading
 * whole, then what it says about the switch, then the air path from looks to taking apart, then the rest.
 * The order of the work is common practice, no published source, except where a line names one.
 */
export const adviceText = {
  'stop-closed-at-rest': {
    state: 'power off',
    sentence:
      'Stop: it is closed at rest, so it proves nothing. Gas and power off if that is safe, leave off, tag it, and tell the occupant and whoever local rules name.',
  },
  'stop-closed-below-its-rating': {
    state: 'power off',
    sentence:
      'Stop: it is closed at a reading too low to close it, so it is stuck, bypassed, or closing too early. Gas and power off if that is safe, leave off, tag it, and tell the occupant and whoever local rules name.',
  },
  'stop-closed-above-its-opening-point': {
    state: 'power off',
    sentence:
      'Stop: it opens on rise, and it is still closed at a reading that should open it. Gas and power off if that is safe, leave off, tag it, and tell the occupant and whoever local rules name.',
  },
  'read-contacts-at-the-same-moment': {
    state: 'running',
    sentence:
      'Read the contact at the same moment as the gauge, with a voltmeter across it, before anything is said about the switch.',
  },
  'read-with-minimum-hold': {
    state: 'running',
    sentence:
      'The display averaged, so the moment that counts may be hidden. Turn averaging off and read with minimum and maximum hold.',
  },
  'watch-for-a-minute': {
    state: 'running',
    sentence: 'Watch the display for at least a minute and record its lowest and highest, not one number.',
  },
  'rest-agrees': {
    state: 'at rest',
    sentence:
      'The gauge is at zero and the contact is as it should be at rest. Now read from a cold start, gauge and contact together.',
  },
  'open-contact-agrees-leave-it-fitted': {
    state: 'at rest',
    sentence:
      'The open contact agrees with the reading. Leave the switch fitted: it reports trouble somewhere else.',
  },
  'closed-between-break-and-make': {
    state: 'running',
    sentence:
      'Between the break point and the make point, and closed while running: not by itself a fault. A brief swing past the point where it opens would not be recovered, so find why the margin is small.',
  },
  'open-between-break-and-make': {
    state: 'running',
    sentence:
      'Between the point where it opens and the point where it closes, an open contact is no fault of the switch: it may have opened for a moment and cannot close again at this reading. Read from the start with minimum and maximum hold.',
  },
  'too-close-leave-it-fitted': {
    state: 'at rest',
    sentence:
      'Too close to call: this reading neither clears the switch nor speaks against it. Leave it fitted.',
  },
  'more-separate-starts': {
    state: 'running',
    sentence:
      'Further separate starts could settle it. Decide on the number beforehand and judge all of them together; none may be left out.',
  },
  'finer-manometer': {
    state: 'running',
    sentence:
      'This gauge is too coarse to settle it. Read again with a finer manometer; more readings with this one will not help.',
  },
  'caught-above-its-limit': {
    state: 'gas off, inducer only',
    sentence:
      'The number caught as it closed lies above the limit. A display lags behind a fast rise, so repeat it with a slow rise before saying that it closes late.',
  },
  'before-the-switch-is-called-faulty': {
    state: 'power off',
    sentence:
      'The contact does not agree with the reading. Before the switch may be called faulty, everything on the list of what must be on record has to be there; see what is still missing.',
  },
  'look-past-this-switch': {
    state: 'power off',
    sentence:
      'The contact is closed, as it should be at this reading. Look past this switch: wiring and terminals, the control, the other devices in the string.',
  },
  'find-what-raises-the-pressure': {
    state: 'outside',
    sentence:
      'The pressure on the vent side is high enough to open it. Look for what holds the gas back: vent end, ice, water in a sag, length and fittings.',
  },
  'look-at-the-inlet-side': {
    state: 'power off',
    sentence:
      'Higher than expected is no good margin: a restriction on the inlet side raises suction while it starves the burners. Look at intake, screen, inlet plate and exchanger, and test for CO before it is left running.',
  },
  'look-at-the-outlet-side': {
    state: 'outside',
    sentence:
      'Higher than expected on the vent side: something holds the gas back between this point and the vent end. Test for CO before it is left running.',
  },
  'find-what-moves-it': {
    state: 'running',
    sentence:
      'It flutters. A beat of one to three seconds suggests water, a move with the gusts wind, a quick shake the wheel, a step as the blower starts a crack: that is a danger, stop there.',
  },
  'look-at-the-terminals': {
    state: 'outside',
    sentence:
      'Outside first: are the vent end and the intake end clear of snow, ice, leaves, nests and screens?',
  },
  'follow-the-hose': {
    state: 'power off',
    sentence:
      'Follow the hose and record where it ends: which part of the air path comes next depends on that.',
  },
  'clear-hose-and-port': {
    state: 'power off',
    sentence:
      'Hose off at the switch first: are hose and port clear, dry, whole and on the right barb? Never blow into a connected switch.',
  },
  'check-drain-and-trap': {
    state: 'power off',
    sentence:
      'Pour water into the drain, eyes covered: does the trap hold its water, and does it run as fast as poured? Water that backs up covers the port.',
  },
  'read-each-port-to-the-room': {
    state: 'gas off, inducer only',
    sentence:
      'Read each port to the room. Both nearer zero than they should be points to the outlet side, both farther from zero to the inlet side (a furnace maker’s service literature on a differential switch).',
  },
  'open-the-vent-for-a-moment': {
    state: 'gas off, inducer only',
    sentence:
      'Open the vent at the furnace for a moment: if the reading recovers, the restriction is on the vent side. Close it again before the gas is on.',
  },
  'open-the-intake-for-a-moment': {
    state: 'gas off, inducer only',
    sentence:
      'Take the intake pipe off at the cabinet for a moment: if the reading recovers, the restriction is on the intake side. Refit it before the gas is on.',
  },
  'look-for-a-leak-before-the-tap': {
    state: 'gas off, inducer only',
    sentence:
      'Look for air drawn in past the burners: inducer gasket, collector box, missing cap, dry trap. Such a leak lowers the suction at this tap.',
  },
  'check-door-and-box-seals': {
    state: 'power off',
    sentence: 'Check the seals of door and burner box: a leak there moves the reading at this tap.',
  },
  'check-the-vent-is-whole': {
    state: 'power off',
    sentence:
      'Check that every vent joint is whole: a vent that has come apart lowers the pressure at this tap, and that is a danger, stop there.',
  },
  'check-inducer-speed-and-volts': {
    state: 'gas off, inducer only',
    sentence: 'Check the inducer: volts at the motor under load, capacitor, sound, speed, then the wheel.',
  },
  'check-the-exchanger-last': {
    state: 'power off',
    sentence: 'Last in the air path, the exchanger: look for restriction with the maker’s own method.',
  },
  'thin-no-proof': {
    state: 'running',
    sentence:
      'It holds by less than the guideline. That is thin: it proves no repair, and the cause may still be there.',
  },
  'make-point-not-on-file': {
    state: 'at rest',
    sentence:
      'Only the point where it opens is on file, and no make point can be made of that. Ask for the make point before saying whether it should close.',
  },
  'break-point-not-on-file': {
    state: 'at rest',
    sentence:
      'The point where it opens is not on file. Ask for it before saying whether it should hold at a reading below the make point.',
  },
  'closing-point-not-on-file': {
    state: 'at rest',
    sentence:
      'The point where it closes again is not on file. An open contact below the opening point may be left from an earlier peak; ask for the closing point.',
  },
  'action-not-stated': {
    state: 'at rest',
    sentence:
      'Nobody has said whether the number is where it closes or where it opens. Below it the answer is the same; ask before judging anything above it.',
  },
  'nothing-to-expect-by': {
    state: 'running',
    sentence:
      'Neither a baseline of this furnace nor a reported running range is on file, so too high cannot be told from high. Record a baseline once the furnace is proven sound.',
  },
  'calibration-out-of-date': {
    state: 'at rest',
    sentence:
      'The gauge is past its calibration date. The reading is shown and counts for less; have it calibrated.',
  },
  'test-for-co': {
    state: 'running',
    sentence: 'This says nothing about combustion: test for CO.',
  },
} as const satisfies Record<string, Advice>

export type AdviceCode = keyof typeof adviceText

export const adviceCodes = Object.keys(adviceText) as AdviceCode[]

/** States in which nothing of the furnace runs, not even its inducer. */
const standsStill: readonly AdviceState[] = ['power off', 'outside', 'at rest']

/** What leads back to running it although it is done at rest: a reading that comes next, or a list that asks for one. */
const leadsToRunning: readonly AdviceCode[] = ['rest-agrees', 'before-the-switch-is-called-faulty']

/** What may be done while the furnace is left off: nothing that runs it, or that leads to running it. */
export const whileLeftOff = (codes: readonly AdviceCode[]): AdviceCode[] =>
  codes.filter((code) => standsStill.includes(adviceText[code].state) && !leadsToRunning.includes(code))

/** Puts codes into the order of the table and drops doubles. */
export function inOrder(codes: ReadonlySet<AdviceCode>): AdviceCode[] {
  return adviceCodes.filter((code) => codes.has(code))
}
