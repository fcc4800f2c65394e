import { useForm } from './context.tsx';
import type { Path } from './json.ts';
import { Wrong } from './placed.tsx';

/** What is wrong with a part of the document as a whole, rather than with one of its fields. */
export function WrongAt({ path }: { path: Path }) {
  const { problems, touched } = useForm();
  const place = path.join('.');
  const mine = problems.filter((p) => p.path === place && (!p.missing || touched.has(place)));
  return <Wrong id={`${place}-wrong`} problems={mine} />;
}
