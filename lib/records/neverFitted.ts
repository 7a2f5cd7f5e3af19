import type { Refusal } from './envelope'
import { isSaid, plain } from './oldList/ruleTwo'

/** What is never fitted nor waited for: it shows nobody that there is enough air. */
export type NeverFitted = 'adjustable or general-purpose switch' | 'jumper or bypass'

/**
 * Words for a switch whose setting can be changed, or that no maker names for the furnace. Fewer than an old list is
 * looked through for: there a row is lost at most, and here people tell of their work, “adjusted the gas pressure”.
 */
const genericWords =
  /(?<!\p{L})(?:adjust[ai]bles?|adj\.?|field[- ]?set(?:table)?|settable|universals?|univ|generics?|gen(?:eral|\.)?[- ]*purpose|after[- ]?market|multi[- ]?fit)(?!\p{L})/giu
const jumperWords =
  /(?<!\p{L})(?:jumper(?:s|ed|ing)?|jump[- ]?(?:wire|lead|cable)s?|by[- ]?pass(?:ed|es|ing)?|(?:jumped|wired|linked) out|shunt(?:s|ed)?|bridged)(?!\p{L})/giu

/** Things of which “universal” or “adjustable” says nothing about a switch: they may be fitted. */
const otherThing =
  /^[- ]*(?:(?!(?:switch|sw|pressure|one|with|for|on|in|to|at|across|and)\b)[\p{L}\d/"-]+ ){0,2}?(?:hangers?|brackets?|straps?|clamps?|supports?|feet|sealants?|sealers?|tapes?|glue|cement|primer|couplings?|elbows?|fittings?|adapters?|connectors?|terminals?|hoses?|tubing|traps?|pumps?|filters?|gaskets?|screws?|igniters?|motors?|inducers?|capacitors?|boards?|thermostats?|valves?|keys?|wrench(?:es)?|dampers?|humidifiers?|ducts?|regulators?)(?![\p{L}])/iu

/** A bypass that takes air or water past something else. */
const otherBypass = /^[- ]*(?:humidifier|damper|duct|valve)/i

const isOtherThing = (words: RegExp, behind: string): boolean =>
  (words === jumperWords ? otherBypass : otherThing).test(behind)

/** Whether a text holds a word of this kind that is not denied and is of no other thing. */
function speaksOf(text: string, words: RegExp): boolean {
  const rest = [...text.matchAll(words)].reduceRight(
    (left, { index, 0: word }) =>
      isOtherThing(words, text.slice(index + word.length))
        ? left.slice(0, index) + left.slice(index + word.length)
        : left,
    text,
  )
  return isSaid(rest, words)
}

/**
 * What a text that names a part says it is, when such a part may not be fitted: the number that is waited for, the
 * material of a repair, what is printed on a switch. Strict: a word that is not denied right before it (“not
 * adjustable”) is enough, unless it is of another thing (“adjustable hanger”).
 *
 *   neverFittedPart('UNIVERSAL ADJUSTABLE SWITCH')  // 'adjustable or general-purpose switch'
 */
export function neverFittedPart(text: string | undefined): NeverFitted | undefined {
  if (text === undefined) return undefined
  const meant = plain(text)
  if (speaksOf(meant, jumperWords)) return 'jumper or bypass'
  return speaksOf(meant, genericWords) ? 'adjustable or general-purpose switch' : undefined
}

const clauseEnd = /[.;,:!?()\n]|\b(?:and|then|but|so|because|while)\b/i
/** A phrase of something being put in. */
const putIn =
  /\b(?:fit(?:ted|ting)?|install(?:ed|ing)?|put(?:ting)?|plac(?:ed|ing)|mount(?:ed|ing)|us(?:ed|ing)|add(?:ed|ing)|wir(?:ed|ing)|clipp?(?:ed|ing)|connect(?:ed|ing)|ran|left|made|set|adjust(?:ed|ing)?|(?:replac|swapp?|chang|exchang)(?:ed|ing)? .*?(?:with|by|for|to|against)|with|via) /gi
/** Behind such a verb, words by which what follows it is not what was put in. */
const putInElse =
  /\b(?:instead|place of|removed|removing|taken|taking|took|not|no|never|without|rather|after|before|where|over from|factory|oem|original|from|out)\b/i
/** A phrase of what somebody else did, of what was there before, or of what went out again. */
const told =
  /\b(?:found|finds?|had|previous(?:ly)?|earlier|before|somebody|someone|owner|tenant|others?|who|that was|already|removed|took|taken|remove|pulled|out of|no|not|never|nobody|without|by (?!us\b|me\b))\b/i
/** The act itself, said of the one who writes: “jumpered the switch”, “we bypassed it”. */
const jumpered =
  /^(?:(?:i|we|have|just|only|temporarily|briefly|tech|technician) )*(?:jumper(?:ed|ing)|by[- ]?pass(?:ed|ing)|bridged|shunted|(?:jumped|wired|linked) out)\b(?! (?:humidifier|damper|duct))/i
/** “Left the jumper off”. */
const goneAgain = /^ (?:off|out|away|removed|gone)\b/i
/** “Universal switch fitted”, “jumper put in”: under “What was done” it says that it was done. */
const wasPutIn =
  /^[^.]*? (?:(?:is|was|has been|now) )*(?:fitted|installed|put (?:in|on|across)|in place|on)\b/i

/**
 * What a text of what was done says was put in. Far less strict than `neverFittedPart`: here people also tell what
 * they found and took out, and that is never refused. A word counts only within one phrase (up to a comma, a full
 * stop, or “and”):
 * - behind a verb of putting in, with at most five words between and none of them turning it round: “fitted a
 *   universal switch”, “replaced it with an adjustable one”, “put a jumper across it”; not “fitted the factory switch
 *   instead of the universal one”;
 * - before one: “universal switch fitted”, unless the phrase tells of what was there (“found”, “had”, “by the owner”)
 *   or went out (“removed”, “took … out”);
 * - as the act itself at the phrase’s beginning: “jumpered the switch”; not “the switch was jumpered”.
 */
export function neverFittedInDone(text: string): NeverFitted | undefined {
  const clauses = plain(text)
    .split(clauseEnd)
    .map((clause) => clause.trim())
  for (const clause of clauses) if (jumpered.test(clause) && !told.test(clause)) return 'jumper or bypass'
  if (clauses.some((clause) => saysPutIn(clause, jumperWords))) return 'jumper or bypass'
  return clauses.some((clause) => saysPutIn(clause, genericWords))
    ? 'adjustable or general-purpose switch'
    : undefined
}

function saysPutIn(clause: string, words: RegExp): boolean {
  return [...clause.matchAll(words)].some(({ index, 0: word }) => {
    const before = clause.slice(0, index)
    const behind = clause.slice(index + word.length)
    if (isOtherThing(words, behind) || goneAgain.test(behind)) return false
    const verb = [...before.matchAll(putIn)].at(-1)
    if (verb === undefined) return wasPutIn.test(`${behind} `) && !told.test(clause)
    const between = before.slice(verb.index + verb[0].length)
    return (
      !putInElse.test(between) &&
      between.trim().split(/\s+/).length <= 5 &&
      !told.test(before.slice(0, verb.index))
    )
  })
}

/**
 * The refusal of a text that names what is never fitted, with what to do instead.
 * @param named what the text says, in its place: “The part that is waited for”
 */
export const neverFittedRefusal = (what: NeverFitted, named: string): Refusal =>
  what === 'jumper or bypass'
    ? {
        rule: 'no bypass',
        sentence: `${named} speaks of a jumper or bypass. It is never a repair nor a step of one: with it nothing proves air. Take it out, fit the factory part, and ask for its rating if none is on file. Is one in? Record it as found fitted, when and by whom.`,
      }
    : {
        rule: 'no general-purpose switch',
        sentence: `${named} speaks of an adjustable or general-purpose switch. Nobody has proven that it shows too little air in this furnace. Order the factory part that the maker names for this model and serial, and ask for its rating if none is on file. Is one in? Record it as found fitted, when and by whom.`,
      }

/** What a repair says was fitted that is never fitted, and where it says so. */
export function neverFittedIn(repair: {
  done: string
  parts?: string
}): { what: NeverFitted; field: 'done' | 'parts' } | undefined {
  const inParts = neverFittedPart(repair.parts)
  if (inParts !== undefined) return { what: inParts, field: 'parts' }
  const inDone = neverFittedInDone(repair.done)
  return inDone === undefined ? undefined : { what: inDone, field: 'done' }
}
