/** A process that erases a club and is killed on the way. */
import { openStore } from '../../src/store/open.ts';

const [url = '', club = ''] = process.argv.slice(2);
const store = await openStore(url);
let looks = 0;
// Whoever else is there gets their turn after each part: this one takes it to be killed.
const interrupt = () => {
  looks += 1;
  if (looks === 2) process.kill(process.pid, 'SIGKILL');
  setImmediate(interrupt);
};
setImmediate(interrupt);
await store.club(club).eraseClub(1);
