/** The codes on furnace tags: making them, reading them back, and the link that a tag holds. */
export { groupedTagCode, isTagCode, makeTagCode, readTagCode, tagAlphabet, tagCodeLength } from './tagCode'
export { codeInTagLink, tagLink, tagPath } from './tagLink'
