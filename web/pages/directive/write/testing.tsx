import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { type ReactNode, useReducer, useState } from 'react';
import type { Words } from '../../../api/directives.ts';
import type { Json } from '../../../parts/write/json.ts';
import type { Problem } from '../../../parts/write/problem.ts';
import { WriterContext } from './context.tsx';
import { type Draft, draftOf } from './draft.ts';
import { begin, write } from './reducer.ts';

const WORDS: Words = {
  facts: [
    { name: 'hours.total', meaning: 'total hours', unit: 'h' },
    { name: 'landings.total', meaning: 'total landings', unit: 'landings' },
    { name: 'landings.tow', meaning: 'landings in use "tow"', unit: 'landings' },
  ],
  uses: ['private', 'tow'],
  kits: ['strengthened_spar'],
  events: ['hard_landing'],
  inspections: ['annual'],
  parts: ['aircraft', 'inboard_spar'],
  models: ['W4', 'W4-T'],
  part_numbers: [],
  directives: [],
  aircraft: [],
};

export const LONG = 'Electrocrackcheckofallfastenerholesofthelowersparcap'.repeat(4);
/** A rule with an action of every kind of limit; invented. */
export const RULE: Json = {
  number: 'W-31',
  issue: 1,
  affects: { models: [{ model: 'W4-T', serials: [{ from: '0600', to: '0700' }, { only: ['0812'] }] }] },
  actions: [
    {
      id: 'first_look',
      title: 'Look at the attach fitting',
      does: 'inspect',
      looks_at: 'inboard_spar',
      counts: { expression: 'landings.total + 2.0 * landings.tow', called: 'counted landings', unit: 'landings' },
      first: {
        first_of: [
          { counted: 8000, is: 'at' },
          {
            later_of: [
              { months: 24, is: 'at', since: 'effective' },
              { on: '2027-01-01', is: 'more than' },
            ],
          },
        ],
      },
      repeat: {
        hours_h: 600,
        is: 'at',
        of: 'part',
        since: { last_look: [{ directive: 'W-31', action: 'first_look' }] },
      },
      missing_papers: 'bounds',
    },
  ],
  cases: [
    {
      name: 'at the limit',
      action: 'first_look',
      day: '2026-11-01',
      model: 'W4-T',
      serial: '0612',
      facts: { 'landings.total': 8000 },
      facts_at: { effective: { day: '2026-10-01', facts: { 'landings.total': 7990 } } },
      expect: { standing: 'due' },
    },
  ],
};

const queries = new QueryClient();
/** A part of the form with a document of its own, for stories and tests; nothing is asked of a server. */
export function Written({
  document,
  problems = [],
  children,
}: {
  document: Json;
  problems?: readonly Problem[];
  children: (draft: Draft) => ReactNode;
}) {
  const [{ draft }, send] = useReducer(write, draftOf(document), begin);
  const [touched] = useState(() => new Set(problems.map((p) => p.path)));
  return (
    <QueryClientProvider client={queries}>
      <WriterContext
        value={{
          shop: 'demo',
          draft,
          send,
          problems,
          facts: WORDS.facts,
          words: WORDS,
          touched,
          touch: () => undefined,
          aircraft: '',
        }}
      >
        {children(draft)}
      </WriterContext>
    </QueryClientProvider>
  );
}
