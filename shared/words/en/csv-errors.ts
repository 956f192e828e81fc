/** What is said of a table that can't be taken, or of one of its rows. */
import type { Problems } from '../../errors.ts';
import type { Show } from '../../measure/show.ts';
import { quote, quoteOption } from '../quote.ts';

type CsvProblem = Extract<keyof Problems, `csv-${string}`>;

/** The fewest columns that work. */
const LEAST = '`cut,bought,trim,cooked,served,price`';

export const csvErrors = (show: Show): { [Code in CsvProblem]: (values: Problems[Code]) => string } => ({
  'csv-empty': () => `There is nothing in that file. The first line names the columns, like ${LEAST}.`,
  'csv-workbook': () => 'That is a workbook, not a CSV file. Save its sheet as CSV (UTF-8), and send that.',
  'csv-binary': () => 'That is no text file. Save the table as CSV (UTF-8), and send that.',
  'csv-page': () =>
    'That is a web page, not a CSV file. Save the table itself as CSV (UTF-8), and send that.',
  'csv-encoding': () =>
    'That file has letters in two encodings, so names would come out wrong. Save it as CSV (UTF-8), and send that.',
  'csv-too-large': ({ megabytes }) =>
    `That file is larger than ${show.count(megabytes)} MB, the most I take. Send it in parts, each with the line of column names.`,
  'csv-too-many-rows': ({ limit }) =>
    `That file has more than ${show.count(limit)} rows, the most I take. Send it in parts, each with the line of column names.`,
  'csv-row-too-large': ({ line, limit }) =>
    `The row at line ${show.count(line)} has more than ${show.count(limit)} characters. Is there a quotation mark that never closes?`,
  'csv-quote-open': ({ line }) =>
    `The quotation mark that opens in the row at line ${show.count(line)} never closes. Close it, or leave it out.`,
  'csv-no-header': () => `I know none of that file's column names. The first line names them, like ${LEAST}.`,
  'csv-column-missing': ({ column, near }) =>
    near === null
      ? `That file has no column ${quote(column)}, and there is no piece without it. The first line names the columns, like ${LEAST}.`
      : `That file has no column ${quote(column)}, and there is no piece without it. Is ${quote(near)} meant? Name it ${quote(column)}.`,
  'csv-column-twice': ({ column, first, second }) =>
    first === second
      ? `That file has the column ${quote(first)} twice. Keep only one of them.`
      : `That file has ${quote(column)} twice, as ${quote(first)} and as ${quote(second)}. Keep only one of them.`,
  'csv-row-too-long': ({ cells, columns }) =>
    `That row has ${show.count(cells)} cells under ${show.count(columns)} columns. A comma inside a cell needs quotation marks around it: "14,8 kg".`,
  'csv-id-rounded': ({ option, read }) =>
    `${quoteOption(option, read)} is what a spreadsheet left of a long number. Make that column text before you paste the numbers.`,
  'csv-id-unreadable': ({ option, read, longest }) =>
    `${quoteOption(option, read)} is no id: letters, digits, \`-\`, \`_\`, \`.\` and \`@\`, at most ${show.count(longest)}.`,
  'csv-piece-twice': ({ read, line }) =>
    `${quoteOption('piece', read)} is at line ${show.count(line)} already. Keep only one of the two, or give this one another id.`,
  'csv-member-missing': () => 'Whose piece is it? Add a column `member` with the id of each.',
  'csv-member-unknown': ({ read }) =>
    `${quoteOption('member', read)} is no member's id. Ids are kept, never names.`,
  'csv-status-unknown': ({ read }) =>
    `${quoteOption('status', read)} is none of \`confirmed\`, \`as typed\` and \`set aside: why\`. It may be empty.`,
  'csv-currency-unknown': ({ read }) =>
    `${quoteOption('currency', read)} is no currency's code. Write one like \`USD\` or \`EUR\`.`,
});
