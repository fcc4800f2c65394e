import { isTable, type Json, type Table } from './json.ts';

/**
 * One document from its text, YAML or JSON. What it lacks is told by the form; only what is no document
 * at all is refused here, in words.
 */
export async function readText(text: string, what: string, refuse?: (given: Table) => void): Promise<Json> {
  const plain = asJson(text) ?? (await asYaml(text));
  if (!isTable(plain)) throw new Error(`This text holds no ${what}. Paste one document, as this program exports it.`);
  refuse?.(plain);
  return plain;
}

/** A million lines of JSON are read at once; of YAML they would take minutes. */
function asJson(text: string): Json | null {
  if (!/^\s*\{/.test(text)) return null;
  try {
    return JSON.parse(text) as Json;
  } catch {
    return null;
  }
}
async function asYaml(text: string): Promise<Json> {
  const { parse } = await import('yaml');
  try {
    return JSON.parse(JSON.stringify(parse(text, { maxAliasCount: 50 }) ?? null)) as Json;
  } catch (e) {
    throw new Error(`This text does not read as a document: ${(e as Error).message.split('\n')[0]}`);
  }
}
