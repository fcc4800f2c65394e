import { useForm } from '../../../parts/write/context.tsx';
import type { Path } from '../../../parts/write/json.ts';
import { dashed } from './fields.tsx';
import { renamedAt } from './needs.ts';

/** Renames a thing of the map, and every place that names it with it. */
export function useRename(path: Path, kind: 'off' | 'open' | 'support') {
  const { draft, send } = useForm();
  return (typed: string) => send({ does: 'open', draft: renamedAt(draft, path, kind, dashed(typed)) });
}
