import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { marked, type Token, type Tokens } from 'marked';
import { type Day, Refusal } from '../engine/index.ts';
import { type Block, emptySheet, type Sheet } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';

export const bare = (text: string): string =>
  text
    .replaceAll(/`([^`]*)`|\*\*([^*]*)\*\*/g, (_, code, bold) => code ?? bold)
    .replaceAll(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replaceAll(/&lt;|&gt;|&amp;/g, (e) => ({ '&lt;': '<', '&gt;': '>', '&amp;': '&' })[e]!)
    .replaceAll(/\s+/g, ' ')
    .trim();

function tableOf(t: Tokens.Table, title: string): Block {
  const columns = t.header.map((h, i) => ({ key: `c${i}`, title: bare(h.text), align: 'left' as const }));
  const rows = t.rows.map((r, n) => ({
    id: `${n}`,
    cells: Object.fromEntries(r.map((c, i) => [`c${i}`, { is: 'text' as const, text: bare(c.text) }])),
  }));
  return { block: 'table', title, columns, rows, empty: '' };
}

/** A method page's text as blocks: a heading opens one, its paragraphs and lists fill it, a table stands for itself. */
export function blocksOf(markdown: string): Block[] {
  const out: Block[] = [];
  let title = '';
  let prose: { paragraphs: string[]; list: string[] } = { paragraphs: [], list: [] };
  const close = () => {
    if (prose.paragraphs.length || prose.list.length)
      out.push({
        block: 'prose',
        title,
        paragraphs: prose.paragraphs,
        ...(prose.list.length ? { list: prose.list } : {}),
      });
    prose = { paragraphs: [], list: [] };
  };
  for (const t of marked.lexer(markdown) as Token[]) {
    if (t.type === 'heading') {
      close();
      title = bare(t.text);
    } else if (t.type === 'list') {
      for (const [i, item] of (t as Tokens.List).items.entries())
        prose.list.push(`${(t as Tokens.List).ordered ? `${i + 1}. ` : ''}${bare(item.text)}`);
    } else if (t.type === 'table') {
      close();
      out.push(tableOf(t as Tokens.Table, title));
    } else if (t.type === 'paragraph' || t.type === 'code') {
      if (prose.list.length) close();
      prose.paragraphs.push(bare(t.text));
    }
  }
  close();
  return out;
}

/** Words whose method stands in the folder, in the order of the alphabet. */
const methodsIn = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => /^[a-z]{3,20}[.]md$/.test(name))
    .map((name) => name.slice(0, -'.md'.length))
    .sort();

/** How a word computes, what it rests on and where it stops being valid. @throws Refusal `server.not-found` */
export function methodSheet(word: string, day: Day): Sheet {
  const folder = join(rootFolder(), 'docs', 'methods');
  const words = methodsIn(folder);
  if (!words.includes(word))
    throw new Refusal('server.not-found', {
      given: `the method "${word}"`,
      allowed: words.join(', '),
      remedy: 'Choose one of them',
    });
  return {
    ...emptySheet(word, `Method: ${word}`, day, false),
    subject: word,
    answer: [{ text: `How the ${word} is computed, what it rests on, and where it stops being valid.` }],
    because: 'The same page lies in the program’s folder as a file.',
    blocks: blocksOf(readFileSync(join(folder, `${word}.md`), 'utf8')),
  };
}
