import { isTable, type Json, tableOf } from './json.ts';

/**
 * One directive from the text of a document, YAML or JSON. What it lacks is told by the form; only what is no document
 * at all is refused here, in words.
 */
export async function readText(text: string): Promise<Json> {
  const { parse } = await import('yaml');
  let given: unknown;
  try {
    given = parse(text, { maxAliasCount: 50 });
  } catch (e) {
    throw new Error(`This text does not read as a document: ${(e as Error).message.split('\n')[0]}`);
  }
  const plain = JSON.parse(JSON.stringify(given ?? null)) as Json;
  if (!isTable(plain)) throw new Error('This text holds no directive. Paste one document, as this program exports it.');
  if (tableOf(plain).sparwright === 'directive-question/1')
    throw new Error('This is a question with directives and a record. Paste one item of its list "directives".');
  return plain;
}
