/** A file that a member attached to a command: every option reaches its command as text, this one too. */

/** A file as the platform tells of it; its bytes are fetched later. */
export interface SentFile {
  /** Where the platform keeps it. */
  url: string;
  name: string;
  /** Bytes, as the platform says. */
  size: number;
}

const SENT = /^(?<size>\d{1,15}) (?<url>[a-z]+:\S+) (?<name>.+)$/s;

/**
 * The text of an option that holds a file.
 * @example writeSentFile({ url: 'https://files.example/1/a.csv', name: 'a.csv', size: 512 })
 * // '512 https://files.example/1/a.csv a.csv'
 */
export const writeSentFile = ({ url, name, size }: SentFile): string => `${size} ${url} ${name}`;

/**
 * Reads back what `writeSentFile` wrote; null for any other text.
 * @example readSentFile('512 https://files.example/1/a.csv a.csv')?.size // 512
 */
export function readSentFile(text: string): SentFile | null {
  const { size, url, name } = SENT.exec(text)?.groups ?? {};
  if (size === undefined || url === undefined || name === undefined) return null;
  return { url, name, size: Number(size) };
}
