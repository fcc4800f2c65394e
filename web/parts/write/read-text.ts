import { isTable, type Json, type Table } from './json.ts';

/**
 * One document from its text, YAML or JSON. What it lacks is told by the form; only what is no document
 * at all is refused here, in words.
 */
export async function readText(text: string, what: string, refuse?: (given: Table) => void): Promise<Json> {
  const { parse } = await import('yaml');
  let given: unknown;
  try {
    given = parse(text, { maxAliasCount: 50 });
  } catch (e) {
    throw new Error(`This text does not read as a document: ${(e as Error).message.split('\n')[0]}`);
  }
  const plain = JSON.parse(JSON.stringify(given ?? null)) as Json;
  if (!isTable(plain)) throw new Error(`This text holds no ${what}. Paste one document, as this program exports it.`);
  refuse?.(plain);
  return plain;
}
