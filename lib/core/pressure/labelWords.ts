import type { LimitKind, Sense } from '../vocabulary'
import { codeEnd, dot, here, wordEnd } from './patterns'

/** What a word of a label says. */
export type WordMeaning =
  | { kind: 'action'; action: 'closes' | 'opens' }
  /** Names one of two contacts or directions, in a way that makers use differently: kept, never interpreted. */
  | { kind: 'undecoded' }
  | { kind: 'limit'; limit: LimitKind }
  | { kind: 'sense'; sense: Exclude<Sense, 'not stated'> }
  /** The bare word "pressure", which after a value may state its sense. */
  | { kind: 'pressure' }
  | { kind: 'tolerance' }
  /** The next whole number is a part number, a model, a date. */
  | { kind: 'reference' }
  | { kind: 'not finite' }
  /** May stand between an action and its number without parting them. */
  | { kind: 'connector' }
  /** Any other word. */
  | { kind: 'word' }

const numberFollows = '(?=[ :=]*[-+–]?[.,]?\\d)'

const word = (alternatives: string, end = wordEnd): RegExp => here(`(?:${alternatives})${end}`)

/**
 * Plain words give an action; abbreviations of the PR / PF, N.O. / N.C. and ON / OFF kinds never do, nor do "rise"
 * and "fall": one writer's fall is suction fading, another's is pressure going more negative.
 */
export const labelWords: readonly (readonly [RegExp, WordMeaning])[] = [
  [here(`nan${codeEnd}|[-+]?inf(?:inity)?${codeEnd}|∞`), { kind: 'not finite' }],
  [word('(?:do )?not (?:close|open|make|break)s?'), { kind: 'word' }],
  [
    here(
      `p\\.?[rf]${dot}${codeEnd}|n\\.[oc]${dot}${codeEnd}|normally[ -](?:open|closed?)${wordEnd}|cut[ -]?(?:in|out)${wordEnd}|(?:pressure )?(?:ris(?:e|es|ing)|fall(?:s|ing)?|(?:in|de)creas(?:e|es|ing))${wordEnd}|(?:on|off)${numberFollows}`,
    ),
    { kind: 'undecoded' },
  ],
  // Ordinary words unless written in capitals.
  [here(`NO(?!\\. \\d)${codeEnd}|(?:NC|ON|OFF)${codeEnd}`, 'uy'), { kind: 'undecoded' }],
  [
    word('clos(?:es?|ing)(?: points?)?|mak(?:es?|ing)(?:[ -]?points?)?'),
    { kind: 'action', action: 'closes' },
  ],
  [word('open(?:s|ing)?(?: points?)?|break(?:s|ing)?(?:[ -]?points?)?'), { kind: 'action', action: 'opens' }],
  [
    here(`max(?:imum)?${dot}${wordEnd}|≤|<=|not (?:more|greater) than|at most`),
    { kind: 'limit', limit: 'maximum' },
  ],
  [here(`min(?:imum)?${dot}${wordEnd}|≥|>=|not less than|at least`), { kind: 'limit', limit: 'minimum' }],
  [here(`nom(?:inal)?${dot}${wordEnd}`), { kind: 'limit', limit: 'nominal' }],
  [here(`(?:suction|negative|neg${dot}|minus|vacuum)${wordEnd}`), { kind: 'sense', sense: 'suction' }],
  [here(`(?:positive|pos${dot}|plus)${wordEnd}`), { kind: 'sense', sense: 'pressure' }],
  [word('pressure'), { kind: 'pressure' }],
  [here(`tol(?:erance)?${dot}${wordEnd}`), { kind: 'tolerance' }],
  [
    here(
      `(?:p/n|pn|m/n|s/n|part|model|mod${dot}|serial|ser${dot}|date|cat${dot}|catalog(?:ue)?|type|rev${dot}|code|kit|lot|no\\.(?= \\d))${codeEnd}|#`,
    ),
    { kind: 'reference' },
  ],
  [
    word(
      'at|points?|set|setting|setpoint|rat(?:ed|ing)|values?|switch|contacts?|is|to|of|the|on|when|if|reach(?:es|ed)|above|below|more|less|than|about|low|high|mid(?:dle)?|medium|first|second|fire|heat|stage|and|or',
    ),
    { kind: 'connector' },
  ],
]
