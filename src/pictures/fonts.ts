/** The shipped fonts: a machine without any draws the same texts. */
import { createRequire } from 'node:module';
import { GlobalFonts } from '@napi-rs/canvas';
import { FONT, FONT_MORE } from '../../shared/pictures/frame.ts';

const FILES = {
  [FONT]: ['latin-400', 'latin-700'],
  [FONT_MORE]: ['latin-ext-400', 'latin-ext-700'],
};

/** Makes the fonts known to the canvas. Throws if one is missing or can't be read. */
export function loadFonts(): void {
  const { resolve } = createRequire(import.meta.url);
  for (const [family, files] of Object.entries(FILES)) {
    for (const file of files) {
      const path = resolve(
        `@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-${file}-normal.woff2`,
      );
      // A font that can't be read is told by null alone, and its texts would be missing from every picture.
      if (GlobalFonts.registerFromPath(path, family) === null)
        throw new Error(`The font ${path} can't be read`);
    }
  }
}
