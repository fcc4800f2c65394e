import type { Direction } from '../../parts/order.ts';

/** What the reader of the fleet page wants to see. It lives in the address, so that back and a shared link work. */
export interface Wanted {
  readonly search: string;
  readonly standing: string;
  readonly type: string;
  readonly base: string;
  /** Key of a stretch of the year band. */
  readonly due: string;
  readonly from: string;
  readonly to: string;
  /** Only what hangs on a paper. */
  readonly paper: boolean;
  readonly sort: string;
  readonly way: Direction;
}
export const EVERYTHING: Wanted = {
  search: '',
  standing: '',
  type: '',
  base: '',
  due: '',
  from: '',
  to: '',
  paper: false,
  sort: '',
  way: 'ascending',
};
const WORDS = ['search', 'standing', 'type', 'base', 'due', 'from', 'to', 'sort'] as const;
const DAY = /^\d{4}-\d{2}-\d{2}$/;

export function readWanted(address: URLSearchParams): Wanted {
  const word = (name: string) => address.get(name) ?? '';
  const day = (name: string) => (DAY.test(word(name)) ? word(name) : '');
  return {
    ...EVERYTHING,
    ...Object.fromEntries(WORDS.map((name) => [name, word(name)])),
    from: day('from'),
    to: day('to'),
    paper: word('paper') === 'yes',
    way: word('way') === 'descending' ? 'descending' : 'ascending',
  };
}

/** Writes what is wanted over the address; whatever else stands in it stays. */
export function writeWanted(wanted: Wanted, address: URLSearchParams): URLSearchParams {
  const out = new URLSearchParams(address);
  const put = (name: string, value: string) => (value === '' ? out.delete(name) : out.set(name, value));
  for (const name of WORDS) put(name, wanted[name]);
  put('paper', wanted.paper ? 'yes' : '');
  put('way', wanted.sort !== '' && wanted.way === 'descending' ? 'descending' : '');
  return out;
}

/** A click on a head: upwards first, then downwards, then back to worst first. */
export function sortedBy(wanted: Wanted, column: string): Wanted {
  if (wanted.sort !== column) return { ...wanted, sort: column, way: 'ascending' };
  if (wanted.way === 'ascending') return { ...wanted, way: 'descending' };
  return { ...wanted, sort: '', way: 'ascending' };
}

/** The same order, all rows. */
export const unfiltered = (wanted: Wanted): Wanted => ({ ...EVERYTHING, sort: wanted.sort, way: wanted.way });
/** Whether only some days are asked for. */
export const isDated = (w: Wanted): boolean =>
  w.from !== '' || w.to !== '' || (w.due !== '' && w.due !== 'dates' && w.due !== 'now');
export const isFiltered = (w: Wanted): boolean =>
  w.paper || [w.search.trim(), w.standing, w.type, w.base, w.due, w.from, w.to].some((v) => v !== '');
