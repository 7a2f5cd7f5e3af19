/**
 * What the trade says of each cause, typed from its own list of symptoms, apart from the catalogue: the findings that
 * speak for it, those that speak against it, what the manometer shows, and what follows from the cause's own name or
 * confirming test. Written as finding, or finding=value. Common practice, no published source.
 */
export type TradeRow = {
  raises: string
  lowers?: string
  /** What the manometer shows: too low from the start, sagging, fluttering and so on. */
  signature?: string
  /** What the confirming test shows, and what the name of the cause says. */
  byItsName?: string
}

/** Water is made only where the furnace condenses. */
const condensingOnly = 'furnace-kind=condensing'

export const tradeTable: Readonly<Record<string, TradeRow>> = {
  'vent-end-blocked': {
    raises:
      'vent-end=blocked, screen-in-vent-end, snow-line-near-pipes, after-snowfall-or-drift, first-start-of-season, when-trouble-began=after other work, same-month-last-year, recovers-with-vent-opened, ports-to-the-room=both nearer zero',
    lowers: 'vent-clear-end-to-end, reading-at-start=beyond make and steady, higher-than-expected',
    signature: 'reading-at-start=too low from the start, reading-at-start=near zero; inducer running',
  },
  'ice-in-vent': {
    raises:
      'vent-end=ringed with ice, screen-in-vent-end, frost-in-a-cold-run, long-runs-in-bitter-cold, first-call-of-the-morning, same-month-last-year, plume-drawn-into-intake, reading-when-hot=sags through break',
    lowers: 'in-mild-weather-only, gurgle-in-a-pipe, vent-clear-end-to-end',
    signature: 'flutter-near-the-limit',
  },
  'water-in-vent-sag': {
    raises:
      'vent-slope=sagging span, vent-slope=slopes the wrong way, gurgle-in-a-pipe, water-slosh-in-inducer, regular-pulse, flutter-near-the-limit, long-runs-in-bitter-cold',
    lowers:
      'vent-clear-end-to-end, vent-slope=falls back to the furnace, reading-when-hot=sags; settles above break',
    signature: 'reading-when-hot=sags through break',
  },
  'vent-over-length': {
    raises:
      'vent-length-count=over the table, vent-pipe-under-size, low-fire-fine-high-fire-too-low, drops-on-stage-change, when-trouble-began=after other work, in-high-wind, when-trouble-began=at installation',
    lowers:
      'when-trouble-began=after years without trouble, vent-length-count=within the table, reading-when-hot=sags; settles above break',
    signature: 'reading-at-start=too low from the start, flutter-near-the-limit',
  },
  'vent-obstructed-or-apart': {
    raises:
      'vent-joint-leaking, vent-separated, when-trouble-began=after other work, recovers-with-vent-opened',
    lowers: 'reading-at-start=beyond make and steady, vent-clear-end-to-end',
    signature: 'reading-at-start=too low from the start',
  },
  'wind-at-vent-end': {
    raises: 'in-high-wind, in-one-wind-direction, moves-with-gusts, termination-not-per-manual',
    lowers: 'on-calm-days-too',
    signature: 'flutter-near-the-limit',
  },
  'intake-blocked': {
    raises:
      'intake=screen or end matted, intake=frosted over, higher-than-expected, recovers-with-intake-off, ports-to-the-room=both farther from zero, in-thaw-or-rain, after-snowfall-or-drift, same-month-last-year, rumble-or-late-light-off, flue-co-high',
    lowers: 'ports-to-the-room=both nearer zero, flue-co-normal-and-steady',
  },
  'intake-pipe-fault': {
    raises:
      'intake-and-vent-swapped, intake-pipe-run=low point that can hold water, intake-pipe-run=over length or under size, recovers-with-intake-off, gurgle-in-a-pipe',
    lowers: 'combustion-air-from=the room',
    signature: 'higher-than-expected, flutter-near-the-limit, plume-drawn-into-intake',
    byItsName: 'intake-pipe-run=crushed',
  },
  'exhaust-into-intake': {
    raises:
      'plume-drawn-into-intake, intake=frosted over, termination-not-per-manual, long-runs-in-bitter-cold, soot-or-rust-flakes',
    lowers: 'pipe-ends-on-separate-walls',
    signature: 'reading-when-hot=sags through break, flutter-near-the-limit',
  },
  'starved-room': {
    raises: 'room-tight-or-louvre-shut, with-other-appliances-on, reading-with-door-off=higher',
    lowers: 'combustion-air-from=outdoors; by its own pipe',
    signature: 'reading-at-start=too low from the start, recovers-with-window-open',
  },
  'trap-plugged': {
    raises:
      'trap=sludge in it, water-in-inducer-housing, water-in-collector-box, drops-out=after 5 to 20 minutes, reading-when-hot=sags through break, recovers-after-draining, water-in-hose, water-slosh-in-inducer, no-drip-on-a-long-run',
    lowers: 'drain-on-water-test=runs free, reading-when-hot=sags; settles above break',
    byItsName: condensingOnly,
  },
  'drain-line-blocked': {
    raises:
      'drain-on-water-test=slow or stop-start, drain-on-water-test=frozen, second-trap-or-no-air-break, long-runs-in-bitter-cold, gurgle-or-sucking-at-drain',
    lowers: 'drain-on-water-test=runs free, reading-when-hot=sags; settles above break',
    signature:
      'drops-out=after 5 to 20 minutes, reading-when-hot=sags through break, recovers-after-draining',
    byItsName: `drain-fall-too-small, drain-on-water-test=does not run, ${condensingOnly}`,
  },
  'pump-or-shared-drain': {
    raises: 'condensate-pump=full or dead, shared-drain-backs-up, code-names-another-device',
    lowers: 'drain-route=by gravity at an open drain, reading-when-hot=sags; settles above break',
    signature: 'reading-when-hot=sags through break',
    byItsName: condensingOnly,
  },
  'trap-dry': {
    raises:
      'trap=dry, gurgle-or-sucking-at-drain, first-start-of-season, when-trouble-began=after other work',
    lowers: 'trap=sludge in it, reading-when-hot=sags; settles above break',
    signature: 'reading-at-start=too low from the start',
    byItsName: `trap=cracked or missing, ${condensingOnly}`,
  },
  'drain-set-for-other-position': {
    raises:
      'furnace-out-of-level, drain-set-for-other-position, water-in-collector-box, collector-cap-missing',
    lowers: 'when-trouble-began=after years without trouble, reading-when-hot=sags; settles above break',
    signature: 'reading-when-hot=sags through break, when-trouble-began=at installation',
    byItsName: condensingOnly,
  },
  'inducer-motor-slow': {
    raises:
      'inducer-sound=bearing squeal or growl, inducer-sound=slow or labouring, inducer-on-call=never starts, switch-after-inducer-start=never closes; waits and times out, switch-after-inducer-start=closes later than that, first-call-of-the-morning, reading-at-start=too low from the start',
    lowers: 'inducer-sound=normal, inducer-speed-and-amps=as rated',
    signature: 'reading-when-hot=sags through break',
    byItsName: 'inducer-speed-and-amps=slow; or amps high',
  },
  'inducer-wheel': {
    raises:
      'inducer-sound=scrape or rattle at the wheel, regular-pulse, water-in-inducer-housing, reading-at-start=too low from the start',
    lowers: 'inducer-sound=normal',
    byItsName: 'inducer-wheel=loose; cracked or corroded, inducer-wheel=packed with debris',
  },
  'inducer-supply-weak': {
    raises:
      'inducer-volts-under-load=low, inducer-capacitor=weak, inducer-on-call=never starts, inducer-on-call=hums; does not turn, inducer-sound=slow or labouring, switch-after-inducer-start=closes later than that',
    lowers: 'inducer-volts-under-load=as rated, inducer-capacitor=as marked',
    signature: 'reading-at-start=too low from the start',
  },
  'suction-side-leak': {
    raises:
      'whistle-at-a-joint, collector-cap-missing, stain-below-collector, reading-at-start=too low from the start',
    lowers: 'higher-than-expected',
    byItsName: 'air-drawn-in-at-a-joint',
  },
  'wrong-inducer': {
    raises:
      'low-fire-fine-high-fire-too-low, when-trouble-began=after other work, inducer-not-the-named-part, drops-on-stage-change, low-fire-only',
    lowers: 'inducer-speed-and-amps=as rated',
    signature: 'reading-at-start=too low from the start',
  },
  'port-plugged': {
    raises:
      'port=plugged, reading-at-start=near zero; inducer running, no-return-to-zero, switch-after-inducer-start=never closes; waits and times out, switch-after-inducer-start=closes later than that',
    lowers: 'port=clear to its full bore',
    byItsName: 'port=narrowed',
  },
  'hose-off-or-leaking': {
    raises:
      'hose-condition=off, hose-condition=cracked; or loose at a barb, reading-at-start=near zero; inducer running',
    lowers: 'hose-condition=on; whole; tight and clear',
    signature: 'reading-at-start=too low from the start, reading-moves-when-hose-is-touched',
  },
  'water-in-hose-or-switch': {
    raises: 'water-in-hose, hose-low-loop, no-return-to-zero',
    lowers: 'reading-when-hot=sags; settles above break',
    signature: 'flutter-near-the-limit',
  },
  'hose-misrouted': {
    raises:
      'hose-condition=pinched, hose-routing=on the wrong port, hose-restrictor=missing, hose-restrictor=blocked, switches-transposed, when-trouble-began=after other work, reading-with-door-off=higher',
    lowers: 'hose-routing=as the diagram shows',
    signature: 'reading-at-start=too low from the start',
  },
  'secondary-exchanger-restricted': {
    raises:
      'higher-than-expected, low-fire-fine-high-fire-too-low, drops-on-stage-change, soot-or-rust-flakes, flue-co-high, flue-temperature=out of range, trap=sludge in it',
    lowers:
      'flue-co-normal-and-steady, trap=holds water; clear, pressure-across-exchanger=as the manual says',
    byItsName: condensingOnly,
  },
  'primary-exchanger-cracked': {
    raises:
      'step-at-blower-start, drops-when-air-blower-starts, flame-moves-at-blower-start, flame-roll-out, scorching, room-co-above-limit',
    signature: 'flutter-near-the-limit',
    byItsName: 'cracked-heat-exchanger',
  },
  'primary-exchanger-sooted': {
    raises: 'flue-co-high, soot-or-rust-flakes, flame-roll-out, scorching, rumble-or-late-light-off',
    lowers: 'flue-co-normal-and-steady',
    signature: 'higher-than-expected',
  },
  'connection-bad': {
    raises:
      'switch-wiring=terminal burnt or corroded, drop-across-closed-contact=above 0.5 V, control-voltage-at-switch=none in, drops-out=within 2 minutes, switch-chatter',
    lowers: 'switch-wiring=sound',
    signature: 'reading-at-start=beyond make and steady',
    byItsName: 'switch-wiring=loose or chafed, control-voltage-low',
  },
  'control-fault': {
    raises: 'closed-switch-not-seen-by-control',
    lowers: 'control-voltage-at-switch=in; none out',
    signature: 'reading-at-start=beyond make and steady',
  },
  'string-open-elsewhere': {
    raises: 'code-names-another-device, control-voltage-at-switch=none in, another-device-open',
    signature: 'reading-at-start=beyond make and steady',
  },
  'restrictor-wrong': {
    raises:
      'restrictor-or-inlet-plate=missing, restrictor-or-inlet-plate=wrong one; or one too many, when-trouble-began=after other work, higher-than-expected',
    lowers: 'restrictor-or-inlet-plate=as the table says',
    signature: 'reading-at-start=too low from the start, when-trouble-began=at installation',
  },
  'cabinet-leak': {
    raises: 'reading-with-door-off=higher, reading-with-door-off=lower',
    lowers: 'reading-with-door-off=no change',
    signature: 'ports-to-the-room=both nearer zero, ports-to-the-room=both farther from zero',
    byItsName: 'gap-in-door-or-box-seal, combustion-air-from=outdoors; by its own pipe',
  },
  'gas-input-off': {
    raises:
      'gas-input=out of range, flue-temperature=out of range, rumble-or-late-light-off, drops-out=within 2 minutes',
    lowers: 'gas-input=within range',
  },
  'elevation-kit-missing': {
    raises: 'elevation-kit=called for and missing',
    lowers: 'elevation-kit=not called for here',
    signature: 'reading-at-start=too low from the start, neighbours-alike',
  },
  'elevation-kit-not-called-for': {
    raises: 'wrong-elevation-switch-fitted, label-differs-from-manual, gas-input=out of range',
    lowers: 'elevation-kit=called for and fitted',
    signature: 'switch-closes-below-rating',
  },
  'wrong-switch-fitted': {
    raises:
      'fitted-part-number=is another number, label-differs-from-manual, general-purpose-switch-fitted, switches-transposed, when-trouble-began=after other work, again-within-30-days',
    lowers: 'fitted-part-number=is the factory number',
    signature: 'open-beyond-make, switch-closes-below-rating',
  },
  'switch-drifted-or-leaking': {
    raises:
      'open-beyond-make, make-on-hand-pump=out of tolerance, leaks-down-on-hand-pump, reading-at-start=beyond make and steady',
    lowers: 'make-on-hand-pump=in tolerance',
  },
  'contacts-resistive': {
    raises: 'drop-across-closed-contact=above 0.5 V, switch-chatter',
    lowers: 'drop-across-closed-contact=under 0.1 V',
    signature: 'reading-at-start=beyond make and steady',
  },
  'switch-stuck-closed': {
    raises: 'switch-after-inducer-start=read as closed before the inducer starts, switch-closed-at-rest',
    lowers: 'no-return-to-zero, port=plugged, switch-wires-shorted',
  },
  'switch-bypassed': {
    raises: 'jumper-or-bypass, switch-after-inducer-start=read as closed before the inducer starts',
    signature: 'switch-closes-below-rating',
    lowers: 'open-beyond-make',
  },
}

export type Pair = { cause: string; finding: string; value: string }

/** A semicolon inside a value stands for its comma, because commas part the list. */
export function pairsOf(cause: string, list: string | undefined): Pair[] {
  if (list === undefined) return []
  return list.split(', ').map((one) => {
    const [finding = '', value = 'seen'] = one.split('=')
    return { cause, finding, value: value.replaceAll('; ', ', ') }
  })
}
