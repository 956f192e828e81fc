/** What is said of a file that could not be had, or given. */
import type { Problems } from '../../errors.ts';
import type { Show } from '../../measure/show.ts';
import { quoteOption } from '../quote.ts';

type FileProblem = Extract<keyof Problems, `file-${string}` | `import-${string}` | `export-${string}`>;

export const fileErrors = (show: Show): { [Code in FileProblem]: (values: Problems[Code]) => string } => ({
  'file-unreadable': ({ option, read }) =>
    `${quoteOption(option, read)} is no file. Type the command anew, and attach the file there.`,
  'file-gone': () => "I can't get that file: the platform does not have it any more. Attach it again.",
  'file-unreachable': () =>
    'The platform did not hand me that file, so nothing was kept. Please try again in a minute.',
  'file-changed': () =>
    'That file, or a setting that it is read by, has changed since I looked at it, so nothing was kept. Send it again with `/club import`.',
  'import-busy': () => 'I am still busy with another file of this club. Please try again in a minute.',
  'import-expired': () =>
    'That is too long ago, so nothing was kept. Send the file again with `/club import`.',
  'export-too-large': ({ megabytes, format }) =>
    `That comes to more than ${show.count(megabytes)} MB, the most I can attach.${
      format === 'json' ? ' `format:csv` is smaller.' : ''
    } Whoever runs me can write it to a file: \`npm run -s export\`.`,
});
