/** What has to be on record before replacing a switch is advised, in the order in which it is asked for. */
export const requirementText = {
  'termination-clear': 'Vent end outdoors looked at and clear. If it was not, clear it and read again.',
  'intake-clear': 'Intake looked at and clear, end to end. If it was not, clear it and read again.',
  'vent-slope-and-water-clear':
    'Vent checked for slope, sags and water, and clear. If it was not, put it right and read again.',
  'drain-and-trap-clear':
    'Drain and trap checked with poured water, and running free. If not, clear and re-prime them, and read again.',
  'hose-clear': 'Hose checked: clear, dry, tight, whole, on the right barb.',
  'port-clear': 'Port checked with the hose off: clear to its full bore.',
  'inducer-sound-and-volts-right': 'Inducer checked: sound, and volts at the motor under load.',
  'wiring-sound': 'Wiring and terminals of the switch checked and sound.',
  'fitted-part-recorded': 'Part number of the switch that is fitted, read off the switch.',
  'factory-part-named':
    'The factory part number for this model and serial, named by the maker: who named it, and where.',
  'part-number-right':
    'The fitted switch is the factory part for this model and serial. If it is not, it is the wrong part, not a faulty one.',
  'part-number-wrong': 'The fitted part number is not the factory part for this model and serial.',
  'rating-trusted':
    'A rating that is Verified, or Supported by the maker’s current literature or factory technical support.',
  'rating-action-stated': 'The rating says whether it is where the switch closes or where it opens.',
  'rating-not-in-dispute': 'The rating is not in dispute. If it is, settle it with the maker first.',
  'rating-holds-here': 'The rating holds for this stage and this elevation.',
  'gauge-zeroed': 'Gauge zeroed open to the room before the reading.',
  'gauge-uncertainty-known': 'The gauge’s accuracy, as its maker states it.',
  'gauge-in-calibration': 'Gauge within its calibration date.',
  'reading-at-the-switch': 'Reading taken at the switch, with a tee, the switch still connected.',
  'reading-between-rated-points': 'Reading taken between the points and on the stage that the rating states.',
  'reading-clears-the-limit':
    'The reading clears the limit with its tolerance and the gauge’s uncertainty together.',
  'reading-steady':
    'The reading held steady for at least a minute; for one that opens early, it did not flutter.',
  'contact-open-at-that-moment':
    'Contact shown open at the moment of that reading: full control voltage across it, or ohms with the wires off.',
  'off-furnace-check':
    'Switch checked off the furnace: slow pull with a hand pump, three times, out of tolerance on all three, or leaking down within ten seconds with the pump line proven tight. One that is in tolerance is sound: look elsewhere.',
  'inducer-stopped': 'Observed at rest, the inducer stopped.',
  'hose-off': 'Observed with the hose off the switch.',
  'wires-off': 'Observed with the wires off the switch.',
  'contact-still-closed': 'The contact was still closed.',
  'contact-closed-above-opening-point':
    'The contact stayed closed at a reading, taken at the switch, that is enough to open it.',
  'contact-closed': 'The contact was closed while the voltage across it was measured.',
  'reading-well-beyond-make':
    'At that time the reading was beyond the make point with tolerance and gauge uncertainty.',
  'drop-under-load': 'Voltage across the closed contact above the limit, under load, each time.',
  'terminals-clean': 'Terminals cleaned and tight before measuring.',
  'drop-repeated': 'The voltage measured once and repeated twice.',
  'supersession-settled':
    'What replaced the factory part number is settled: one number, for this serial and elevation.',
} as const satisfies Record<string, string>

export type Requirement = keyof typeof requirementText

export const requirements = Object.keys(requirementText) as Requirement[]
