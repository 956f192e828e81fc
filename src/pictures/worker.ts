/** The drawing thread's side. */
import { serveThread } from '../thread.ts';
import { draw } from './local.ts';

serveThread(draw);
