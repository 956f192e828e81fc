/** How `npm start` starts the compiled bot, for tests and benches that start it by themselves. */
import { atTop } from './at-top.ts';

const { scripts } = JSON.parse(atTop('package.json')) as { scripts: { start: string } };

/** What stands between `node` and the program: `['--max-semi-space-size=1', …]`. */
export const NODE_FLAGS: readonly string[] =
  / node (.*) \.build\/src\/main\.js$/.exec(scripts.start)?.[1]?.split(' ') ?? [];

/** What a container and the service set for it besides. */
export const HOST_ENVIRONMENT = { MALLOC_MMAP_THRESHOLD_: '131072' };
