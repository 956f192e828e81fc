/** The other thread's side of long work on the file. */
import { serveThread } from '../thread.ts';
import { backUp } from './backup.ts';
import type { Deed } from './elsewhere.ts';
import { tidy } from './tidy.ts';

serveThread(async (deed: Deed) =>
  deed.kind === 'tidy' ? tidy(deed.url, deed) : backUp(deed.url, deed.backupDir, deed.now),
);
