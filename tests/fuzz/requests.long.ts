import { REQUESTS } from './asked.ts';
import { fuzz } from './target.ts';

fuzz(REQUESTS);
