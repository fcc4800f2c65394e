import { useId, useState } from 'react';
import { CellView } from '../../parts/cell.tsx';
import { ReplyForm } from './reply-form.tsx';
import { RequestText } from './request-text.tsx';
import type { WantedRowProps } from './wanted-row-props.ts';

/** One aircraft whose reading is wanted: what is known, the request to copy, the reply to write down. */
export function WantedRow(props: WantedRowProps) {
  const { row, columns } = props;
  const [first, ...others] = columns;
  const [open, setOpen] = useState<'request' | 'reply' | null>(null);
  const id = useId();
  const { registration, request } = row.cells;
  const name = registration?.is === 'link' ? registration.text : row.id;
  const toggle = (what: 'request' | 'reply') => setOpen(open === what ? null : what);
  const opener = (what: 'request' | 'reply', text: string) => (
    <button type="button" aria-expanded={open === what} aria-controls={`${id}${what}`} onClick={() => toggle(what)}>
      {text}
      <span className="hidden-text"> of {name}</span>
    </button>
  );
  return (
    <li>
      <h3>{first ? <CellView cell={row.cells[first.key]} /> : name}</h3>
      <dl>
        {others.map((c) => (
          <div key={c.key}>
            <dt>{c.title}</dt>
            <dd>
              {row.cells[c.key] ? <CellView cell={row.cells[c.key]} /> : 'none'}
              {c.unit && row.cells[c.key]?.is === 'quantity' ? ` ${c.unit}` : ''}
            </dd>
          </div>
        ))}
      </dl>
      <div className="actions no-print">
        {opener('request', 'Request')}
        {opener('reply', 'Reply')}
      </div>
      <div id={`${id}request`} hidden={open !== 'request'} className="panel">
        {open === 'request' && request?.is === 'text' ? (
          <RequestText {...props} name={name} words={request.text} done={() => setOpen(null)} />
        ) : null}
      </div>
      <div id={`${id}reply`} hidden={open !== 'reply'} className="panel">
        {open === 'reply' ? <ReplyForm {...props} name={name} /> : null}
      </div>
    </li>
  );
}
