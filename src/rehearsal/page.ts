/** A rehearsal as a page to read: a ledger of who said what, with the cards as they were answered. */
import { relative } from 'node:path';
import type { Reply } from '../../shared/chat/reply.ts';
import { printTable } from '../text/table.ts';
import type { Outcome } from './line.ts';

export interface Entry {
  line: string;
  as: string;
  outcome: Outcome | null;
  /** The file of its picture, if it was drawn. */
  picture: string | null;
}

const escapeText = (text: string): string =>
  text.replace(
    /[&<>"]/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign,
  );

/** Our own sentences mark what can be typed with backticks. */
const inline = (text: string): string => escapeText(text).replace(/`([^`]*)`/g, '<code>$1</code>');

const STYLE = `
  :root { color-scheme: light; --ink: #1b1b1b; --quiet: #5c5c5c; --rule: #ded6c8; --paper: #fbf8f2; --mark: #0072b2; }
  * { box-sizing: border-box; }
  body { margin: 0 auto; max-width: 46rem; padding: 2rem 1rem 4rem; background: var(--paper); color: var(--ink);
    font: 1rem/1.5 Georgia, 'Liberation Serif', serif; }
  h1 { font-size: 1.7rem; margin: 0 0 .25rem; } p.about { color: var(--quiet); margin: 0 0 2rem; }
  h2 { font-size: 1.1rem; font-style: italic; margin: 2.5rem 0 .5rem; border-top: 2px solid var(--ink); padding-top: .5rem; }
  article { border-top: 1px solid var(--rule); padding: .8rem 0; display: grid; grid-template-columns: 4.5rem 1fr; gap: 0 1rem; }
  article > b { color: var(--mark); } code, pre { font: .88rem/1.45 'DejaVu Sans Mono', monospace; }
  article > code { overflow-wrap: anywhere; color: var(--quiet); }
  section { grid-column: 2; margin-top: .4rem; } section.alone { border-left: 3px solid var(--rule); padding-left: .8rem; }
  section p { margin: 0; } section p.answer { font-weight: bold; } section p.small { color: var(--quiet); font-size: .85rem; }
  section p.offers { color: var(--quiet); font-size: .85rem; font-style: italic; }
  pre { margin: .3rem 0; overflow-x: auto; } img { display: block; width: 100%; max-width: 26rem; margin: .5rem 0; border: 1px solid var(--rule); }
  @media (max-width: 32rem) { article { grid-template-columns: 1fr; } section { grid-column: 1; } }
`;

/** The page; pictures are linked relative to `folder`. */
export function pageOf(title: string, about: string, entries: readonly Entry[], folder: string): string {
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeText(title)}</title>
<style>${STYLE}</style>
<h1>${escapeText(title)}</h1>
<p class="about">${escapeText(about)}</p>
${entries.map((entry) => entryOf(entry, folder)).join('\n')}
</html>
`;
}

function entryOf({ line, as, outcome, picture }: Entry, folder: string): string {
  if (line.startsWith('#')) return `<h2>${escapeText(line.replace(/^#\s*/, ''))}</h2>`;
  const said = `<b>${escapeText(as)}</b><code>${escapeText(line.replace(/^@\S+\s+/, ''))}</code>`;
  return `<article>${said}${outcome === null ? '' : outcomeOf(outcome, picture === null ? null : relative(folder, picture))}</article>`;
}

function outcomeOf(outcome: Outcome, picture: string | null): string {
  if (outcome.kind !== 'answer' || outcome.answer.kind !== 'reply') return '';
  const { reply, audience } = outcome.answer;
  const apart = reply.privately === undefined ? '' : replyOf(reply.privately, null, true);
  return `${reply.welcome === undefined ? '' : replyOf(reply.welcome, null, false)}${replyOf(reply, picture, audience === 'member')}${apart}`;
}

function replyOf(reply: Reply, picture: string | null, alone: boolean): string {
  const { answer, lines = [], table = [], small = [], actions = [] } = reply;
  const image =
    picture === null || reply.picture === undefined
      ? ''
      : `<img src="${escapeText(picture)}" alt="${escapeText(reply.picture.alt)}" loading="lazy">`;
  return [
    `<section${alone ? ' class="alone"' : ''}>`,
    `<p class="answer">${inline(answer)}</p>`,
    ...lines.map((line) => `<p>${inline(line)}</p>`),
    table.length === 0 ? '' : `<pre>${escapeText(printTable(table).join('\n'))}</pre>`,
    image,
    ...small.map((line) => `<p class="small">${inline(line)}</p>`),
    actions.length === 0
      ? ''
      : `<p class="offers">${actions.map(({ label }) => escapeText(label)).join(' · ')}</p>`,
    '</section>',
  ].join('');
}
