/** The bytes of a file as text, in whichever encoding a spreadsheet saved them. */
import { MemberError } from '../../shared/errors.ts';
import { type Limits, refuseLarge } from './limits.ts';

export type Bytes = AsyncIterable<Uint8Array> | Iterable<Uint8Array>;

/** Characters that Windows-1252 has where Latin-1 has controls, from 0x80. Source: WHATWG Encoding Standard, index-windows-1252. */
const WINDOWS = '€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ';
/** A zip (what workbooks are), and the older workbooks. */
const WORKBOOKS = ['PK\x03\x04', 'PK\x05\x06', '\xd0\xcf\x11\xe0'];
/** Bytes are decoded, and then parsed, in pieces of this size: the parser may take milliseconds for each. */
const SLICE = 4096;
/** Bytes that tell what kind of file it is. */
const LONGEST_MARK = 4;

const BEYOND_ASCII = /[^\0-\x7f]/;

type Decode = (bytes: Uint8Array, last: boolean) => string;

/**
 * The text in pieces.
 * @throws MemberError for a workbook, for what is no text, and for more bytes than the limit, as soon as that is seen.
 */
export async function* decode(source: Bytes, limits: Limits): AsyncGenerator<string> {
  let decoder: Decode | null = null;
  let total = 0;
  for await (const slice of slices(source)) {
    total += slice.length;
    refuseLarge(total, limits);
    decoder ??= decoderFor(slice);
    yield refuseBinary(decoder(slice, false));
  }
  if (decoder !== null) yield refuseBinary(decoder(new Uint8Array(), true));
}

/** The first slice is long enough to tell what kind of file it is, unless the file is shorter. */
async function* slices(source: Bytes): AsyncGenerator<Uint8Array> {
  let held: Uint8Array = new Uint8Array();
  for await (const chunk of source) {
    held = held.length === 0 ? chunk : Buffer.concat([held, chunk]);
    if (held.length < LONGEST_MARK) continue;
    for (let at = 0; at < held.length; at += SLICE) yield held.subarray(at, at + SLICE);
    held = new Uint8Array();
  }
  if (held.length > 0) yield held;
}

function refuseBinary(text: string): string {
  if (text.includes('\0')) throw new MemberError('csv-binary', {});
  return text;
}

const startsWith = (bytes: Uint8Array, ...mark: readonly number[]): boolean =>
  mark.every((byte, at) => bytes[at] === byte);

function decoderFor(start: Uint8Array): Decode {
  const magic = Buffer.from(start.subarray(0, 4)).toString('latin1');
  if (WORKBOOKS.some((mark) => magic.startsWith(mark))) throw new MemberError('csv-workbook', {});
  if (startsWith(start, 0xff, 0xfe)) return marked('utf-16le');
  if (startsWith(start, 0xfe, 0xff)) return marked('utf-16be');
  return utf8OrWindows();
}

/** A byte order mark tells the encoding; the decoder leaves it out. */
function marked(encoding: 'utf-16le' | 'utf-16be'): Decode {
  const decoder = new TextDecoder(encoding);
  return (bytes, last) => decoder.decode(bytes, { stream: !last });
}

/** UTF-8 until a byte shows that it is not; letters that were UTF-8 before it make the file a mixture. */
function utf8OrWindows(): Decode {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let isWindows = false;
  let seen = false;
  /** A character whose rest is in the next slice. */
  let begun: Uint8Array = new Uint8Array();
  return (bytes, last) => {
    if (isWindows) return windows1252(bytes);
    const whole = Buffer.concat([begun, bytes]);
    try {
      const text = decoder.decode(bytes, { stream: !last });
      seen ||= BEYOND_ASCII.test(text);
      begun = whole.subarray(whole.length - unfinished(whole));
      return text;
    } catch {
      if (seen || hasUtf8(whole)) throw new MemberError('csv-encoding', {});
      isWindows = true;
      return windows1252(whole);
    }
  };
}

/** How many bytes at the end begin a character of UTF-8 that does not end there. */
function unfinished(bytes: Uint8Array): number {
  for (let back = 1; back <= Math.min(3, bytes.length); back += 1) {
    const byte = bytes[bytes.length - back] ?? 0;
    if (byte < 0x80) return 0;
    if (byte >= 0xc0) return back < (byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2) ? back : 0;
  }
  return 0;
}

/** Whether there are characters of UTF-8 of more than one byte: in Windows-1252 they would be `Ã¼`. */
const hasUtf8 = (bytes: Uint8Array): boolean =>
  /[^\0-\x7f\ufffd]/.test(new TextDecoder('utf-8').decode(bytes));

/** By hand: the platform's own decoder takes it for Latin-1. */
const windows1252 = (bytes: Uint8Array): string =>
  Buffer.from(bytes)
    .toString('latin1')
    .replace(/[\x80-\x9f]/g, (letter) => WINDOWS[letter.charCodeAt(0) - 0x80] ?? letter);
