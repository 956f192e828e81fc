import { openStore } from '../../src/store/open.ts';
import { storeContract } from './contract.ts';
import { makeFolder } from './folder.ts';

storeContract('in memory', async () => {
  const store = await openStore(':memory:');
  return { store, discard: () => store.close() };
});

storeContract('in a file', async () => {
  const folder = makeFolder();
  const store = await openStore(folder.url('deep/club.db'), { migrate: true });
  const discard = async () => {
    await store.close();
    folder.discard();
  };
  return { store, discard };
});
