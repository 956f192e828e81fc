/** A process that erases a club and is killed on the way. */
import { connect } from '../../src/store/database.ts';
import { openStore } from '../../src/store/open.ts';

const [url = '', club = ''] = process.argv.slice(2);
const store = await openStore(url);
const count = connect(url).$client.prepare('select count(*) from piece').pluck();
const atFirst = count.get();
// Whoever else is there gets their turn after each part: this one takes it to be killed.
const interrupt = () => {
  if (count.get() !== atFirst) process.kill(process.pid, 'SIGKILL');
  setImmediate(interrupt);
};
setImmediate(interrupt);
await store.club(club).eraseClub(1);
