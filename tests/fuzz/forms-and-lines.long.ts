import { FORMS_AND_LINES } from './asked.ts';
import { fuzz } from './target.ts';

fuzz(FORMS_AND_LINES);
