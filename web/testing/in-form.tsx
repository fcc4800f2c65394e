import { type ReactNode, useReducer, useState } from 'react';
import type { Scene } from '../../sheets/model.ts';
import { BasisPictureContext } from '../parts/basis/picture.ts';
import { FormContext } from '../parts/write/context.tsx';
import { type Json, tableOf } from '../parts/write/json.ts';
import type { Problem } from '../parts/write/problem.ts';
import { begin, write } from '../parts/write/reducer.ts';
import { Given } from './given.tsx';

/** A part of a form with a document of its own, for stories and tests; nothing is asked of a server. */
export function InForm({
  document,
  problems = [],
  picture = null,
  children,
}: {
  document: unknown;
  problems?: readonly Problem[];
  picture?: Scene | null;
  children: ReactNode;
}) {
  const [{ draft }, send] = useReducer(write, tableOf(document as Json), begin);
  const [touched] = useState(() => new Set(problems.map((p) => p.path)));
  return (
    <Given>
      <FormContext value={{ draft, send, problems, touched, touch: () => undefined }}>
        <BasisPictureContext value={picture}>{children}</BasisPictureContext>
      </FormContext>
    </Given>
  );
}
export const wrong = (path: string, says: string): Problem => ({ path, says, missing: false });
