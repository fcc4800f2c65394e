import { useState } from 'react';
import type { PapersSheet, WrittenEntry } from '../../api/papers.ts';
import { today } from '../../api/today.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { Input, Select } from '../../parts/field.tsx';
import { EVIDENCE } from '../aircraft/forms/common.tsx';
import { given, slugOf } from '../aircraft/forms/read.ts';
import { BeforeAfter } from './before-after.tsx';
import { BodyFields } from './body-fields.tsx';
import { bodyOf, FIELDS } from './fields.ts';
import { KeptHere, paperOf } from './rows-grid.tsx';
import type { Book } from './scans.tsx';
import { useKept } from './use-kept.ts';
import { useWriting } from './use-writing.ts';

interface Props {
  readonly shop: string;
  readonly aircraft: string;
  readonly sheet: PapersSheet;
  readonly book: Book;
  readonly sha256: string | null;
}
interface Typed {
  readonly kind: string;
  readonly subject: string;
  readonly day: string;
  readonly row: string;
  readonly evidence: string;
  readonly note: string;
  readonly into: string;
  readonly place: string;
  readonly texts: Readonly<Record<string, string>>;
}
const START: Typed = {
  kind: 'reading',
  subject: '',
  day: '',
  row: '',
  evidence: 'copy',
  note: '',
  into: '',
  place: '',
  texts: {},
};
const OF_PARTS = ['fitment', 'removal', 'opening'];

/** One entry of any kind that matters, with the page that it was read from. */
export function SingleEntry({ shop, aircraft, sheet, book, sha256 }: Props) {
  const kept = useKept<Typed>(`entry ${shop} ${aircraft}`, START);
  const t = kept.value;
  const [said, setSaid] = useState('');
  const writing = useWriting(shop, aircraft, sheet.last, (numbers) => {
    setSaid(`Written: entry ${numbers.join(', ')}. The answers are computed anew.`);
    kept.set({ ...START, kind: t.kind, evidence: t.evidence, day: t.day });
  });
  const change = (next: Partial<Typed>) => {
    setSaid('');
    writing.reset();
    kept.set({ ...t, ...next });
  };
  const parts = sheet.subjects.filter((s) => s.id !== aircraft);
  const subjects = OF_PARTS.includes(t.kind) ? parts : sheet.subjects;
  const subject = t.subject || (OF_PARTS.includes(t.kind) ? '' : aircraft);
  const entries = (): readonly WrittenEntry[] => {
    if (!t.day) throw new Error('Say on which day it was.');
    if (!book.title.trim()) throw new Error('Say which paper this is, above: it is kept with the entry.');
    if (t.row.trim() && !/^[1-9]\d*$/.test(t.row.trim())) throw new Error('The row is a whole number, or empty.');
    const paper = given({ ...paperOf(book, sha256), row: t.row.trim() ? Number(t.row) : undefined });
    const common = given({ day: t.day, evidence: t.evidence, paper, note: t.note.trim() || undefined });
    const body = bodyOf(t.kind, t.texts, '');
    if (t.kind !== 'part') {
      if (!subject) throw new Error('Choose the part.');
      return [{ ...common, id: 'e', subject, kind: t.kind, body } as WrittenEntry];
    }
    if (!t.into || slugOf(t.place) === '') throw new Error('Say where the part was fitted.');
    const id = `${String(body.part)}:${t.day}-${Date.now().toString(36)}`;
    return [
      { ...common, id: 'e', subject: id, kind: 'part', body },
      { ...common, id: 'f', subject: id, kind: 'fitment', body: { into: t.into, place: slugOf(t.place) }, order: 1 },
    ] as unknown as WrittenEntry[];
  };
  const typed = Object.values(t.texts).some(Boolean);
  return (
    <>
      <div className="fields">
        <Select
          label="What it says"
          name="kind"
          value={t.kind}
          set={(kind) => change({ kind, texts: {}, subject: '' })}
          options={sheet.kinds.filter((k) => FIELDS[k.kind]).map((k) => ({ value: k.kind, text: k.words }))}
        />
        {t.kind === 'part' ? null : (
          <Select
            label="About"
            name="about"
            value={subject}
            set={(s) => change({ subject: s })}
            options={[
              ...(subject === '' ? [{ value: '', text: 'please choose' }] : []),
              ...subjects.map((s) => ({ value: s.id, text: s.name })),
            ]}
          />
        )}
        <Input label="Day" name="entry-day" type="date" max={today()} value={t.day} set={(day) => change({ day })} />
        <BodyFields
          kind={t.kind}
          texts={t.texts}
          set={(texts) => change({ texts })}
          places={sheet.subjects}
          uses={sheet.uses}
        />
        {t.kind === 'part' ? (
          <>
            <Select
              label="Fitted into"
              name="into"
              value={t.into}
              set={(into) => change({ into })}
              options={[
                { value: '', text: 'please choose' },
                ...sheet.subjects.map((s) => ({ value: s.id, text: s.name })),
              ]}
            />
            <Input
              label="Place"
              name="place"
              value={t.place}
              set={(place) => change({ place })}
              hint="For example left wing"
            />
          </>
        ) : null}
        <Input label="Row of the page" name="row" value={t.row} set={(row) => change({ row })} maxLength={6} />
        <Select
          label="Known from"
          name="entry-evidence"
          options={EVIDENCE}
          value={t.evidence}
          set={(evidence) => change({ evidence })}
        />
        <Input label="Note" name="note" value={t.note} set={(note) => change({ note })} maxLength={2000} />
      </div>
      <div className="actions">
        <BusyButton
          type="button"
          className="first"
          busy={writing.busy !== ''}
          onClick={() => void writing.show(entries)}
        >
          Show before and after
        </BusyButton>
        {typed ? <KeptHere failed={kept.failed} /> : null}
      </div>
      <BeforeAfter writing={writing} said={said} />
    </>
  );
}
