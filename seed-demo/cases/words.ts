/** What callers say, by what they notice. */
export const complaints = {
  cold: [
    'No heat this morning',
    'Tries three times, then nothing',
    'Fan hums, no flame',
    'House cold since last night',
    'Light blinks, no heat',
    'Woke up to 13 degrees inside',
    'Dead since the weekend',
    'Starts, clicks, gives up',
  ],
  hot: [
    'Runs ten minutes, then stops',
    'Heats for a while, then goes out',
    'Stops at night, comes back by itself',
    'Never gets the house warm, keeps stopping',
    'Goes out whenever it runs long',
  ],
  restless: [
    'On and off all evening',
    'Clicks and starts over',
    'Short bursts of heat, no more',
    'Stops for no reason, sometimes all day long',
  ],
  rough: ['Rumbles when it starts', 'Smells odd and starts late', 'Bangs at the start'],
} as const

/** Remarks of the day, each used as often as it comes. */
export const visitNotes = [
  'Cellar light is out, head torch.',
  'Dog. Friendly.',
  'Access through the neighbour’s yard.',
  'Furnace behind the preserves, everything moved and put back.',
  'Tenant at work till four, caretaker let me in.',
  'Very tight closet: door off its hinges to get at it.',
  'Baby asleep upstairs, quiet work.',
  'Road only one lane today.',
  'Attic hatch painted shut.',
  'They had an electric heater going, so no hurry.',
  'Showed them where the vent end is.',
  'Water heater in the same room looks fine.',
  'Old filter, told them.',
  'Third time I tell them about the boxes in front of the louvre.',
] as const

/** Of causes that no list has. */
export const unlistedNotes = [
  'Flood water had been in the cabinet in spring: everything damp, nothing on the list says that.',
  'Somebody had stuffed a towel round the cabinet against the noise.',
  'Plaster dust from the rebuilding, in everything at once.',
  'Mice, and what mice leave, from the burner box to the board.',
  'A generator on the circuit since the storm: volts all over the place.',
  'Cabinet had been moved a hand’s breadth for the new floor, everything pulled at once.',
  'Chimney sweep’s brush stuck in the common flue of the house next door. Not ours, but ours to find.',
  'Thermostat cable chewed. It had nothing to do with the switch at all.',
] as const

/** Why people say no. */
export const declined = [
  'We wait until spring, the stove will do.',
  'The landlord has to decide that.',
  'Selling the house, not putting that money in.',
  'My cousin does that for less.',
  'We get another offer first.',
] as const

/** Where parts are ordered. */
export const orderedWhere = [
  'Quarlfoot Furnace Supply, counter',
  'Ridgeback Heating Parts, Dunmarrow counter',
  'Vennet Road Wholesale, counter',
] as const

export const heatAndFrost = [
  'Two electric heaters lent, taps left dripping',
  'Wood stove in the kitchen, water shut and drained upstairs',
  'They stay with family; water shut off and lines drained',
  'Heaters from the van, second visit tomorrow',
] as const

export const told = [
  'owner',
  'tenant, and the owner by telephone',
  'caretaker and the owner',
  'owner and her son',
] as const
