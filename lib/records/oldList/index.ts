/** Taking over a team's old list of ratings: from a file's bytes to the records that it becomes. */
export {
  type ColumnField,
  type Columns,
  columnFields,
  columnWords,
  guessColumns,
} from './columns'
export { type DateOrder, guessDateOrder } from './dates'
export { type DecimalSign, guessDecimals } from './decimals'
export { decode, type Encoding, encodings, guessEncoding, isWorkbook } from './decode'
export { whatIsOnFile } from './onFile'
export {
  type Answers,
  type Asked,
  gatherAsked,
  type NameAnswer,
  noAnswers,
  type PositionAnswer,
} from './places'
export { type Plan, type PlannedReport, planImport, type Step, type Verdict } from './plan'
export { fieldsOf, type Reading, unitsInHeads } from './readRow'
export { readTable, type Separator, separators, type Table } from './readTable'
export { recordsOf } from './records'
