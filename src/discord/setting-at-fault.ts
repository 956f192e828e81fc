/** What of a failed log-in or request is a setting's fault. */
import { type Environment, EnvironmentError } from '../environment.ts';

/** Nobody is there, or no such address. */
const UNREACHABLE: readonly string[] = [
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ETIMEDOUT',
  'EHOSTUNREACH',
  'ENETUNREACH',
];

const UNAUTHORIZED = 401;

/** The one line that names the setting; anything else as it is. */
export function settingAtFault(
  problem: unknown,
  { DISCORD_API_URL: url }: Pick<Environment, 'DISCORD_API_URL'>,
): unknown {
  if (!(problem instanceof Error)) return problem;
  const { code, status } = problem as Error & { code?: unknown; status?: unknown };
  if (code === 'TokenInvalid' || status === UNAUTHORIZED)
    return new EnvironmentError('DISCORD_TOKEN: the platform does not know it.', { cause: problem });
  if (!UNREACHABLE.includes(String(code))) return problem;
  return new EnvironmentError(`DISCORD_API_URL: ${url} can't be reached: ${code}`, { cause: problem });
}
