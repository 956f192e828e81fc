/** What follows a script's name: `--help` tells how it is used, and so does whatever it can't take. */
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { messageOf } from '../problem.ts';

type Read<Config extends ParseArgsConfig> = ReturnType<typeof parseArgs<Config>>;

/** Ends the process where it is asked for help, or told what it does not know. */
export function readArguments<const Config extends ParseArgsConfig>(
  usage: string,
  config: Config,
): Read<Config> {
  const options = { ...config.options, help: { type: 'boolean' } } as const;
  try {
    const read = parseArgs({ ...config, options }) as Read<Config> & { values: { help?: boolean } };
    if (!read.values.help) return read;
    console.log(usage);
    process.exit(0);
  } catch (problem) {
    misused(messageOf(problem), usage);
  }
}

/** Says what is wrong and how it is used, and ends the process. */
export function misused(problem: string, usage: string): never {
  console.error(`${problem}\n${usage}`);
  process.exit(2);
}
