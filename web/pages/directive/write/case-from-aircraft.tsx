import type { Table } from './json.ts';

export function CaseFromAircraft({ add: _add }: { add: (item: Table) => void }) {
  return null;
}
