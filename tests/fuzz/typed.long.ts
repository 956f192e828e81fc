import { fuzz } from './target.ts';
import { TYPED } from './typed.ts';

fuzz(TYPED);
