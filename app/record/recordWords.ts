import { causeById } from '@/lib/catalogue/causes'
import { readableFinding } from '@/lib/catalogue/findings/readableFinding'
import { readingSituations } from '@/lib/catalogue/fromReadings/situations'
import { sources } from '@/lib/catalogue/sources'
import {
  betweenWords,
  senseWords,
  stageWords,
  switchKindEntries,
  tapWords,
} from '@/lib/catalogue/switchKinds'
import { unlistedCause } from '@/lib/core/diagnosis'
import { dangerSentence } from '@/lib/core/guard'
import { unitLabel } from '@/lib/core/pressure'
import { partClassNames } from '../equipment/partClassWords'
import { showsWords } from '../ui/photo/photoWords'
import { actionWords } from '../ui/words/actionWords'
import { splitWords } from './kindNames'
import * as shown from './shown'

/** How a field is called, and how its value is shown; text as it stands where nothing is said. */
export type Field = { name: string; show?: shown.Show; fields?: Fields }
export type Fields = Readonly<Record<string, Field>>

const field = (name: string, show?: shown.Show): Field => (show === undefined ? { name } : { name, show })
const group = (name: string, fields: Fields): Field => ({ name, fields })

const wordsOf = (entries: Readonly<Record<string, { words: string }>>): shown.Show =>
  shown.oneOf(Object.fromEntries(Object.entries(entries).map(([key, { words }]) => [key, words])))

const action = shown.oneOf({
  closes: actionWords.closes.name,
  opens: actionWords.opens.name,
  'not stated': actionWords['not stated'].name,
})
const source = wordsOf(sources)
const cause: shown.Show = (id) =>
  id === unlistedCause ? 'Something that is not on the list' : (causeById(String(id))?.name ?? String(id))

/** What belongs to a number, wherever one is recorded. */
const bundle: Fields = {
  kind: field('Kind of switch', wordsOf(switchKindEntries)),
  between: field('Between', shown.oneOf(betweenWords)),
  tap: field('Where the hose ends', shown.oneOf(tapWords)),
  stage: field('Stage', shown.oneOf(stageWords)),
  sense: field('Suction or pressure', shown.oneOf(senseWords)),
}

const value: Fields = {
  action: field('Closes or opens', action),
  limit: field('The number is a', shown.oneOf({ nominal: 'nominal value' })),
  pascals: field('Number', shown.pressure),
  toleranceAbove: field('Tolerance above', shown.pressure),
  toleranceBelow: field('Tolerance below', shown.pressure),
}

/** Fields that mean the same wherever they stand. */
const everywhere: Fields = {
  note: field('Note'),
  reason: field('Reason'),
  makerId: field('Maker', shown.record),
  rangeId: field('Furnace range', shown.record),
  positionId: field('Switch position', shown.record),
  positionIds: field('Switch positions', shown.record),
  sisterId: field('Its sister', shown.record),
  furnaceId: field('Furnace', shown.record),
  gaugeId: field('Gauge', shown.record),
  caseId: field('Case', shown.record),
  visitId: field('Visit', shown.record),
  requestId: field('Rating request', shown.record),
  requestIds: field('Rating requests', shown.record),
  organisationId: field('Whom was rung', shown.record),
  reportIds: field('Reports', shown.record),
  needs: field('Why it matters now'),
  measured: field('Measured', shown.printed),
  noticeId: field('Shut-down notice', shown.record),
  readingId: field('Reading', shown.record),
  on: field('Day', shown.day),
  model: field('Model number', shown.printed),
  serial: field('Serial number', shown.printed),
  revision: field('Revision', shown.printed),
  partNumber: field('Part number', shown.printed),
  printed: field('Printed on it', shown.printed),
  fuel: field('Fuel'),
  licence: field('Licence'),
  minutes: field('Time taken', shown.figure('min')),
}

const ofKind: Readonly<Record<string, Fields>> = {
  maker: { name: field('Name') },
  'equipment range': {
    name: field('Name'),
    modelPatterns: field('Model numbers and patterns', shown.printed),
    heat: field('Heat'),
    revisions: field('Revisions', shown.revisions),
    serials: field('Serials', shown.serials),
  },
  position: { ...bundle, name: field('Name') },
  part: {
    class: field('What it is', shown.oneOf(partClassNames)),
    fieldAdjustable: field('Can its setting be changed in the field?'),
    listedIn: field('Where it is listed'),
  },
  supersession: {
    oldPartId: field('Old part', shown.record),
    newPartId: field('New part', shown.record),
    setting: field('Its setting'),
    kit: field('Is it a kit?'),
    statedIn: field('Where it is stated'),
    on: field('Since', shown.day),
  },
  furnace: {
    siteLabel: field('Site'),
    branch: field('Branch'),
    elevationMetres: field('Elevation', shown.height),
    ventLengthMetres: field('Length of the vent', shown.height),
    ventMaterial: field('Vent'),
    replaces: field('Replaces', shown.record),
  },
  gauge: {
    name: field('Name'),
    unit: field('Displays', shown.oneOf(unitLabel)),
    percentOfReading: field('Accuracy, of the reading', shown.figure('%')),
    counts: field('Accuracy, counts'),
    percentOfSpan: field('Accuracy, of the full scale', shown.figure('%')),
    combine: field(
      'How the parts of its accuracy combine',
      shown.oneOf({ plus: 'they add up', greater: 'the greater counts' }),
    ),
    spanPascals: field('Full scale', shown.pressure),
    resolutionPascals: field('Smallest step', shown.pressure),
    calibrationDue: field('Calibration due', shown.day),
  },
  report: {
    ...value,
    ...bundle,
    asWritten: field('Letter for letter', shown.printed),
    unit: field('Unit of the source', shown.oneOf(unitLabel)),
    decimals: field('Decimals of the source'),
    source: field('Rests on', source),
    proof: group('Proof', {
      kind: field('What it is'),
      photoId: field('Photo', shown.record),
      name: field('Document', shown.printed),
      page: field('Page', shown.printed),
      edition: field('Edition', shown.printed),
      organisation: field('Whom was rung'),
      reference: field('Their reference', shown.printed),
    }),
    readBack: field('Read back digit by digit?'),
    secondPersonId: field('Who else read or heard it', shown.person),
    origin: field('Counts once with others of', shown.printed),
    saidBy: field('Who said it'),
    saidOn: field('Said on', shown.day),
    readOffPart: field('Read off the part', shown.record),
    partNumber: field('Part number that the source names', shown.printed),
    revisionRange: field('Revisions that it holds for', shown.revisions),
    serialRange: field('Serials that it holds for', shown.serials),
    elevationBand: field('Elevations that it holds for', shown.elevations),
    furnaceId: field('Made on the furnace', shown.record),
    requestId: field('Answers the request', shown.record),
  },
  settlement: {
    ...value,
    evidenceReportId: field('Settled by', shown.record),
    overruledReportIds: field('Overruled', shown.record),
  },
  withdrawal: {
    record: field('What is withdrawn', shown.record),
    replacedBy: field('In its place', shown.record),
  },
  withholding: { record: field('Of', shown.record), fields: field('What is withheld') },
  'same as': { kept: field('Kept', shown.record), duplicate: field('Its duplicate', shown.record) },
  'rating request': {
    positionName: field('Which switch', shown.printed),
    printed: field('Printed on the switch', shown.printed),
  },
  'found fitted': {
    partId: field('Part', shown.record),
    what: field('What is in'),
    fittedWhen: field('Fitted when'),
    fittedBy: field('Fitted by'),
    foundOn: field('Found on', shown.day),
  },
  repair: {
    done: field('What was done'),
    fittedPart: field('Part fitted', shown.record),
    partFrom: field('Where it came from'),
    switchReplaced: field('Was a switch replaced?'),
    parts: field('Other parts and material'),
  },
  preference: {
    unit: field('Unit', shown.oneOf(unitLabel)),
    theme: field('Light or dark'),
    gaugeId: field('Own gauge', shown.record),
  },
  case: {
    complaint: field('Complaint'),
    circuit: field('What it is about'),
    serialSeen: field('Serial number on the plate that day', shown.printed),
  },
  visit: { weather: field('Weather') },
  finding: {
    finding: field('What was looked at', (id) => readableFinding(String(id))?.name ?? String(id)),
    value: field('What was seen'),
  },
  reading: {
    ...bundle,
    samples: field('Readings', shown.pressure),
    lowest: field('Lowest seen', shown.pressure),
    highest: field('Highest seen', shown.pressure),
    door: field('Door'),
    secondsWatched: field('Watched for', shown.figure('s')),
    averaging: field('Did the display average?'),
    movement: field('How it moved'),
    separateStarts: field('Each from its own start?'),
    phase: field('When in the run'),
    contacts: field('Contact at that moment'),
    situation: field('What was done just before', wordsOf(readingSituations)),
    when: field('Before or after the repair'),
    byTeeAtTheSwitch: field('By a tee at the switch?'),
    zeroed: field('Zeroed before?'),
    asTyped: field('Typed, letter for letter', shown.printed),
    against: group('The rating as it stood then', {
      ...value,
      ...bundle,
      rivals: group('Also possible', value),
      level: field('Level'),
      sources: field('Sources', source),
      reportIds: field('Reports', shown.record),
    }),
  },
  baseline: { occasion: field('Occasion') },
  'combustion test': {
    when: field('Before or after the repair'),
    roomCoPpm: field('CO in the room', shown.figure('ppm')),
    roomCoLimitPpm: field('The employer’s limit for the room', shown.figure('ppm')),
    flueCoPpm: field('CO in the flue', shown.figure('ppm')),
    oxygenPercent: field('Oxygen in the flue', shown.figure('%')),
    flueCoLimitPpm: field('Limit for the flue, air-free', shown.figure('ppm')),
    flueCoLimitFrom: field('Where that limit is printed'),
    minutesRunning: field('Had been running for', shown.figure('min')),
    minutesAsked: field('The manual asks for', shown.figure('min')),
    meter: field('Meter', shown.printed),
  },
  ending: {
    how: field('How it ended'),
    mainCause: field('Main cause', cause),
    contributingCause: field('Contributing cause', cause),
    confirmingTest: field('The test that confirms it'),
    repairIds: field('Repairs', shown.record),
    minutes: field('Minutes of work', shown.figure('min')),
    thermostatCycles: field('Cycles by the thermostat'),
    putBack: field('Put back'),
    nothingToPutBack: field('Nothing to put back of'),
    supersessionChecked: field('Was it checked what replaces it?'),
    orderedWhere: field('Ordered at', shown.printed),
    followUpOn: field('Follow-up on', shown.day),
    declinedBecause: field('Why it was declined'),
  },
  'shut-down notice': {
    found: field('What was found'),
    doNotRelightUntil: field('Not to be relit until'),
    gas: field('Gas'),
    power: field('Power'),
    tagged: field('Tagged?'),
    told: field('Who was told'),
    toldAt: field('Told at', shown.moment),
    writtenNotice: field('Written notice left?'),
    authority: field('Authority or gas supplier'),
    authorityWho: field('Who was told there'),
    heatAndFrost: field('Heat and frost meanwhile'),
  },
  lifting: { because: field('What was put right') },
  'danger answer': {
    dangers: field('Dangers', shown.oneOf(dangerSentence)),
    done: field('What was done'),
  },
  'asks too': { printed: field('Printed on the switch', shown.printed) },
  promise: { minutes: field('Holds for', shown.figure('min')) },
  organisation: {
    name: field('Name'),
    source: field('What it is', source),
    makerIds: field('Answers for', shown.record),
    number: field('Number', shown.printed),
  },
  'call attempt': {
    number: field('Number that was dialled', shown.printed),
    outcome: field('What became of it'),
    ringBackAt: field('Ring again at', shown.moment),
    person: field('Who spoke'),
    reference: field('Their reference', shown.printed),
    offered: field('Offered', shown.printed),
  },
  'answer seen': {
    personId: field('Whom it reached', shown.person),
    how: field('How'),
  },
  'warranty answer': {
    repairId: field('Repair', shown.record),
    partReturned: field('Part that went back', shown.printed),
    outcome: field('What became of it'),
    amountMinorUnits: field('Amount, in the smallest unit of its currency'),
    currency: field('Currency', shown.printed),
    organisationId: field('Whose answer', shown.record),
    answeredBy: field('Who answered'),
    reasonGiven: field('Reason given'),
    reference: field('Their reference', shown.printed),
  },
  tag: { code: field('Code on the tag', shown.printed) },
  import: {
    fileName: field('File'),
    sha256: field('Hash of the file', shown.printed),
    encoding: field('Encoding'),
    separator: field('Between the cells'),
    rows: field('Rows of the file'),
    taken: field('Rows taken over'),
  },
  'imported lines': {
    importId: field('Import', shown.record),
    lines: group('Rows', { row: field('Row'), record: field('Became', shown.record) }),
  },
  photo: {
    sha256: field('Hash of the picture', shown.printed),
    picture: field('The picture'),
    mediaType: field('Kind of file'),
    width: field('Width', shown.figure('pixels')),
    height: field('Height', shown.figure('pixels')),
    bytes: field('Size', shown.figure('bytes')),
    capturedAt: field('Taken, by the camera’s clock', shown.moment),
    shows: field('What it shows', shown.oneOf(showsWords)),
    findingId: field('Finding that it shows', shown.record),
    reportId: field('Report that it bears out', shown.record),
    caption: field('What is to be seen'),
  },
  'switch check': {
    what: field('What was checked'),
    pulls: field('Pulls of the hand pump', shown.pressure),
    heldForTenSeconds: field('Held for ten seconds?'),
    pumpLineProvenTight: field('Pump line proven tight?'),
    inducerStopped: field('Inducer stopped?'),
    hoseOff: field('Hose off?'),
    wiresOff: field('Wires off?'),
    contact: field('Contact'),
    volts: field('Voltage', shown.figure('V')),
    underLoad: field('Under load?'),
    terminals: field('Terminals'),
  },
}

/** The unit that a key ends with is how its value is shown, where nothing else says so. */
const byEnding: readonly (readonly [RegExp, shown.Show])[] = [
  [/pascals$/i, shown.pressure],
  [/^tolerance/, shown.pressure],
  [/Metres$/, shown.height],
  [/Ids?$/, shown.record],
]

/** The one place that says how a field of a kind is called and shown. One without an entry is called by its key. */
export function fieldOf(kind: string, key: string): Field {
  const known = ofKind[kind]?.[key] ?? everywhere[key]
  if (known !== undefined) return known
  return field(splitWords(key), byEnding.find(([ending]) => ending.test(key))?.[1])
}
