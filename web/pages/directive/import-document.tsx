import { useLocation } from 'wouter';
import { DocumentIn } from '../../parts/write/document-in.tsx';
import { handOver } from '../../parts/write/hand-over.ts';
import { refuseQuestion } from './write/read-rule.ts';

/** One document, dropped or pasted, opens the form filled in. */
export function ImportDocument({ shop }: { shop: string }) {
  const [, go] = useLocation();
  return (
    <section className="sheet no-print" aria-labelledby="import-document">
      <h2 id="import-document">Import one directive as a document</h2>
      <p className="soft">
        YAML or JSON, its test cases inside, as the page of a directive exports it. It opens in the form: look it over,
        try it on the fleet, adopt it there.
      </p>
      <DocumentIn
        what="directive"
        refuse={refuseQuestion}
        button="Open it in the form"
        take={(document) => {
          handOver('directive', document);
          go(`/${shop}/directive/new`);
        }}
      />
    </section>
  );
}
