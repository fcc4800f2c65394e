type Fields = Readonly<Record<string, unknown>>;
const fields = (x: unknown): Fields => (typeof x === 'object' && x !== null ? (x as Fields) : {});

const without = (document: Fields, dropped: readonly string[]): Fields =>
  Object.fromEntries(Object.entries(document).filter(([field]) => !dropped.includes(field)));
/** How long each list of a document is. */
const countsOf = (document: Fields): Readonly<Record<string, number>> =>
  Object.fromEntries(
    Object.entries(document).flatMap(([field, of]) => (Array.isArray(of) ? [[field, of.length]] : [])),
  );
const picked = (list: unknown, names: readonly string[]): readonly Fields[] =>
  (Array.isArray(list) ? list : []).map((x) =>
    Object.fromEntries(names.flatMap((n) => (fields(x)[n] === undefined ? [] : [[n, fields(x)[n]]]))),
  );
const isKept = (x: unknown): boolean => typeof fields(x).kept === 'string';

function ofStructure(document: Fields): Fields {
  const lists = Object.keys(countsOf(document)).filter((field) => field !== 'models');
  return { ...without(document, [...lists, 'coating', 'each']), counts: countsOf(document) };
}
function ofFloor(document: Fields): Fields {
  return {
    ...without(document, ['closed', 'fasteners', 'consumables', 'shifts']),
    crew: picked(document.crew, ['name', 'skills']),
    jigs: picked(document.jigs, ['id', 'name', 'kind', 'hand', 'check_good_until']),
    counts: countsOf(document),
  };
}
function ofTeardown(document: Fields): Fields {
  const inside = ['map', 'floor'].filter((field) => document[field] !== undefined && !isKept(document[field]));
  const titles = inside.map((field) => [field, { title: fields(document[field]).title }]);
  return {
    ...without(document, ['recorded', 'edge_distances', ...inside]),
    ...Object.fromEntries(titles),
    counts: countsOf(document),
  };
}
function ofBasis(document: Fields): Fields {
  if (document.loading === undefined) return document;
  const short = Object.entries(fields(document.loading)).filter(([field]) => !/^(cycles|bands)/.test(field));
  return { ...document, loading: Object.fromEntries(short) };
}

/**
 * A kept document without the lists that may run to a million lines: what lists and choices show of it. Of a map, a
 * floor and a job it says in `counts` how long each list is.
 */
export function outlineOf(document: unknown): Fields {
  const d = fields(document);
  if (d.sparwright === 'structure/1') return ofStructure(d);
  if (d.sparwright === 'floor/1') return ofFloor(d);
  if (d.sparwright === 'teardown/1') return ofTeardown(d);
  return ofBasis(d);
}
