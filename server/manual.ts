import { existsSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { marked, type Token, type Tokens } from 'marked';
import { Refusal } from '../engine/index.ts';
import type { Manual, ManualPart } from '../sheets/index.ts';
import { rootFolder } from '../store/index.ts';
import { bare } from './methods.ts';

const docs = () => join(rootFolder(), 'docs');

function partsOf(t: Token): ManualPart[] {
  if (t.type === 'list') return [{ is: 'list', items: (t as Tokens.List).items.map((i) => bare(i.text)) }];
  if (t.type !== 'paragraph') return [];
  const [first] = (t as Tokens.Paragraph).tokens ?? [];
  if (first?.type === 'image')
    return [{ is: 'picture', address: `/api/manual/${basename(String(first.href))}`, text: String(first.text) }];
  return [{ is: 'paragraph', text: bare((t as Tokens.Paragraph).text) }];
}

/** The manual of the program's folder, section by section. */
export function manualOf(markdown: string): Manual {
  let title = '';
  const sections: { title: string; parts: ManualPart[] }[] = [{ title: '', parts: [] }];
  for (const t of marked.lexer(markdown) as Token[])
    if (t.type === 'heading' && (t as Tokens.Heading).depth === 1) title = bare((t as Tokens.Heading).text);
    else if (t.type === 'heading') sections.push({ title: bare((t as Tokens.Heading).text), parts: [] });
    else sections.at(-1)!.parts.push(...partsOf(t));
  return { title, sections: sections.filter((s) => s.title || s.parts.length) };
}
export const manual = (): Manual => manualOf(readFileSync(join(docs(), 'manual.md'), 'utf8'));

/** Where a picture of the manual lies; only those that the manual names. @throws Refusal `server.not-found` */
export function picturePath(name: string): string {
  const named = manual().sections.some((s) =>
    s.parts.some((p) => p.is === 'picture' && p.address === `/api/manual/${name}`),
  );
  const path = join(docs(), 'manual', name);
  if (!named || !existsSync(path))
    throw new Refusal('server.not-found', {
      given: `the picture "${name}"`,
      allowed: 'a picture that the manual names',
      remedy: 'Open the manual',
    });
  return path;
}
