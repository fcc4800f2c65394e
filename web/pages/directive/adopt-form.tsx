import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { post } from '../../api/client.ts';
import { shopPath } from '../../api/shops.ts';
import { today } from '../../api/today.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Field, Input } from '../../parts/field.tsx';
import { given, valuesOf } from '../aircraft/forms/read.ts';

/** Storing a directive is adopting it: with name and day, after its own test cases have run. */
export function AdoptForm({ shop }: { shop: string }) {
  const [text, setText] = useState('');
  const form = useRef<HTMLFormElement>(null);
  const queries = useQueryClient();
  const [, go] = useLocation();
  const adopt = useMutation({
    mutationFn: (body: Record<string, unknown>) => post<{ number?: string }>(shopPath(shop, 'directives'), body),
    onSuccess: async (answer) => {
      setText('');
      form.current?.reset();
      await queries.invalidateQueries();
      if (answer?.number) go(`/${shop}/directive/${encodeURIComponent(answer.number)}`);
    },
  });
  return (
    <section className="sheet no-print" aria-labelledby="adopt">
      <h2 id="adopt">Adopt a directive</h2>
      <p className="soft">
        A document in YAML or JSON, one directive at a time. Its own test cases run first; one that fails them is not
        adopted.
      </p>
      <p className="soft">
        To begin from an example, run <code>npx sparwright example directive</code> in a terminal: each document under{' '}
        <code>directives:</code> is one. <code>npx sparwright schema directive</code> lists every field that it may
        hold.
      </p>
      <form
        ref={form}
        onSubmit={(e) => {
          e.preventDefault();
          const v = valuesOf(e.currentTarget);
          adopt.mutate(given({ text, by: v.text('by'), on: v.text('on') }));
        }}
      >
        <div className="fields">
          <Field label="Choose a file" hint="YAML or JSON">
            {(ids) => (
              <input
                {...ids}
                type="file"
                accept=".yaml,.yml,.json"
                onChange={(e) => void e.target.files?.[0]?.text().then(setText)}
              />
            )}
          </Field>
          <Input label="Adopted by" name="by" required />
          <Input label="On" name="on" type="date" required value={today()} max={today()} />
          <Field label="The document" whole>
            {(ids) => (
              <textarea
                {...ids}
                className="document"
                spellCheck={false}
                required
                value={text}
                onChange={(e) => setText(e.target.value)}
              />
            )}
          </Field>
        </div>
        <ErrorNotice error={adopt.error} />
        <div className="actions">
          <button type="submit" className="first" disabled={adopt.isPending}>
            {adopt.isPending ? 'Running its test cases ...' : 'Run its test cases and adopt it'}
          </button>
        </div>
      </form>
    </section>
  );
}
