/** How large the store is on disk. */
import { stat } from 'node:fs/promises';

/** Bytes of a database file and of its log; 0 where there is none, as for one in memory. */
export async function storeBytes(file: string): Promise<number> {
  const sizes = await Promise.all(
    [file, `${file}-wal`].map((path) =>
      stat(path).then(
        ({ size }) => size,
        () => 0,
      ),
    ),
  );
  return sizes.reduce((sum, size) => sum + size, 0);
}
