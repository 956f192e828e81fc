import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readSentFile, writeSentFile } from '../../../shared/chat/sent-file.ts';

const url = fc.stringMatching(/^https:\/\/[a-z\d.-]{1,30}\/[!-~]{0,60}$/);

test('reads back what it wrote, whatever the name', () => {
  fc.assert(
    fc.property(url, fc.string({ minLength: 1 }), fc.nat(), (url, name, size) => {
      expect(readSentFile(writeSentFile({ url, name, size }))).toEqual({ url, name, size });
    }),
  );
});

test.each([
  '',
  'a.csv',
  '512 a.csv',
  '512 https://files.example/1',
  '-1 https://files.example/1 a',
  'https://x.example a b',
])('takes %j for no file', (text) => expect(readSentFile(text)).toBeNull());
