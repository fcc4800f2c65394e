import { useState } from 'react';
import { aircraftOf } from '../../api/import.ts';
import type { PaperRow, PapersSheet, WrittenEntry } from '../../api/papers.ts';
import { useSheet } from '../../api/sheets.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { Field, Input, Select } from '../../parts/field.tsx';
import { EVIDENCE } from '../aircraft/forms/common.tsx';
import { given } from '../aircraft/forms/read.ts';
import { BeforeAfter } from './before-after.tsx';
import { BodyFields } from './body-fields.tsx';
import { bodyOf, furtherOf, textsOf } from './fields.ts';
import { KeptHere } from './rows-grid.tsx';
import { useKept } from './use-kept.ts';
import { useWriting } from './use-writing.ts';

interface Props {
  readonly shop: string;
  readonly aircraft: string;
  readonly sheet: PapersSheet;
  readonly row: PaperRow;
  readonly close: () => void;
}
interface Typed {
  readonly subject: string;
  readonly day: string;
  readonly evidence: string;
  readonly title: string;
  readonly page: string;
  readonly row: string;
  readonly note: string;
  readonly texts: Readonly<Record<string, string>>;
  readonly further: string;
}
type Body = Readonly<Record<string, unknown>>;
const asRecorded = (r: PaperRow): Typed => ({
  subject: r.subject,
  day: r.day,
  evidence: r.evidence,
  title: r.paper,
  page: r.page,
  row: r.row,
  note: r.entry.note ?? '',
  texts: textsOf(r.kind, r.entry.body as Body),
  further: furtherOf(r.kind, r.entry.body as Body),
});

/** The newest entry that stands in place of one, as far as this list tells. */
export function newestOf(row: PaperRow, rows: readonly PaperRow[]): PaperRow {
  let at = row;
  for (let by = at.replacedBy; by; by = at.replacedBy) {
    const next = rows.find((r) => r.number === by?.number);
    if (!next) break;
    at = next;
  }
  return at;
}

/** A correcting entry, filled with what is recorded. Nothing is overwritten: the old entry stays to be read. */
export function Correct({ shop, aircraft, sheet, row, close }: Props) {
  const [start] = useState(() => asRecorded(row));
  const kept = useKept<Typed>(`correction ${shop} ${row.number}`, start);
  const t = kept.value;
  const [said, setSaid] = useState('');
  const [target, setTarget] = useState(row);
  const now = sheet.rows.find((r) => r.number === target.number) ?? target;
  const newest = newestOf(now, sheet.rows);
  const overtaken = said === '' && now.replacedBy !== null;
  const writing = useWriting(shop, aircraft, sheet.last, (numbers) => {
    setSaid(`Written: entry ${numbers[0]} stands in place of entry ${target.number}.`);
    kept.clear();
  });
  const change = (next: Partial<Typed>) => {
    writing.reset();
    kept.set({ ...t, ...next });
  };
  const entries = (): readonly WrittenEntry[] => {
    if (!t.day) throw new Error('Say on which day it was.');
    if (t.row.trim() && !/^[1-9]\d*$/.test(t.row.trim())) throw new Error('The row is a whole number, or empty.');
    const before = (row.entry.paper ?? {}) as Body;
    const title = t.title.trim();
    const paper = given({
      ...before,
      title: title || undefined,
      page: t.page.trim() || undefined,
      row: t.row.trim() ? Number(t.row) : undefined,
    });
    return [
      given({
        id: 'c',
        subject: t.subject,
        kind: row.kind,
        day: t.day,
        order: row.entry.order,
        evidence: t.evidence,
        paper: title ? paper : undefined,
        note: t.note.trim() || undefined,
        body: bodyOf(row.kind, t.texts, t.further),
        replaces: String(target.number),
      }) as unknown as WrittenEntry,
    ];
  };
  const evidence = EVIDENCE.some((e) => e.value === row.evidence)
    ? EVIDENCE
    : [{ value: row.evidence, text: row.evidenceWords }, ...EVIDENCE];
  const fleet = useSheet(shop, ['fleet']);
  const elsewhere = aircraftOf(fleet.data, shop).filter((o) => o.id !== aircraft);
  return (
    <section className="correct" aria-label={`Correct entry ${row.number}`}>
      {overtaken ? (
        <div className="notice" role="alert">
          <p>
            <strong>
              Entry {now.number} was corrected in the meantime. What you typed stands below; nothing is lost.
            </strong>
          </p>
          <p>{now.replacedBy?.words}</p>
          <p>It said before: {row.says}</p>
          {newest.correctable ? (
            <div className="actions">
              <button
                type="button"
                onClick={() => {
                  writing.reset();
                  setTarget(newest);
                }}
              >
                Correct entry {newest.number} with what I typed
              </button>
              <button type="button" onClick={close}>
                Leave it as it is now
              </button>
            </div>
          ) : (
            <p>It stands with another aircraft now: correct it there.</p>
          )}
        </div>
      ) : null}
      <div className="fields">
        <Input label="Day" name="correct-day" type="date" value={t.day} set={(day) => change({ day })} />
        <BodyFields
          kind={row.kind}
          texts={t.texts}
          set={(texts) => change({ texts })}
          places={sheet.subjects}
          uses={sheet.uses}
        />
        <Input label="Paper" name="correct-title" value={t.title} set={(title) => change({ title })} />
        <Input label="Page" name="correct-page" value={t.page} set={(page) => change({ page })} maxLength={40} />
        <Input label="Row" name="correct-row" value={t.row} set={(r) => change({ row: r })} maxLength={6} />
        <Select
          label="Known from"
          name="correct-evidence"
          options={evidence}
          value={t.evidence}
          set={(e) => change({ evidence: e })}
        />
        <Input
          label="Why it is corrected"
          name="correct-note"
          value={t.note}
          set={(note) => change({ note })}
          maxLength={2000}
        />
        <Select
          label="It is about"
          name="correct-subject"
          value={t.subject}
          set={(subject) => change({ subject })}
          hint="Written to the wrong aircraft? Choose the right one"
          options={[
            ...sheet.subjects.map((s) => ({ value: s.id, text: s.name })),
            ...(row.subject === aircraft
              ? elsewhere.map((o) => ({ value: o.id, text: `another aircraft: ${o.registration}` }))
              : []),
          ]}
        />
        {t.further || start.further ? (
          <Field label="What else it says" whole hint="As it was recorded, field by field; leave it if it is right">
            {(ids) => (
              <textarea
                {...ids}
                className="document"
                value={t.further}
                onChange={(e) => change({ further: e.target.value })}
              />
            )}
          </Field>
        ) : null}
      </div>
      <div className="actions">
        <BusyButton
          type="button"
          className="first"
          disabled={overtaken}
          busy={writing.busy !== ''}
          onClick={() => void writing.show(entries)}
        >
          Show before and after
        </BusyButton>
        <button
          type="button"
          onClick={() => {
            kept.clear();
            close();
          }}
        >
          Leave the form
        </button>
        <KeptHere failed={kept.failed} />
      </div>
      <BeforeAfter writing={writing} said={said} />
    </section>
  );
}
