import { useState } from 'react';
import { useForm } from '../../../parts/write/context.tsx';
import { ChoiceIn, FigureIn, RenameIn, TextIn } from '../../../parts/write/inputs.tsx';
import { type Json, listOf, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { MoneyIn } from '../../../parts/write/money-in.tsx';
import { More } from '../../../parts/write/more.tsx';
import { OneOf } from '../../../parts/write/one-of.tsx';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { NO_SOURCE, SourceIn } from '../../../parts/write/source-in.tsx';
import { ThreePointIn } from '../../../parts/write/three-point-in.tsx';
import { FASTENERS, SIDES, STAGES, WHO, WORKS } from './choices.ts';
import { dashed, HandsIn, ShortIn, YesIn } from './fields.tsx';
import { EACH } from './join-fields.tsx';
import { freshId, idsOf } from './needs.ts';
import { NeedsIn, StepsIn } from './needs-in.tsx';
import { useRename } from './use-rename.ts';

const things = (list: Json | undefined) =>
  listOf(list).map((v) => ({ value: textOf(tableOf(v).id), text: textOf(tableOf(v).name) || textOf(tableOf(v).id) }));

function IdOf({ path }: { path: Path }) {
  const { send } = useForm();
  return (
    <RenameIn
      always
      path={[...path, 'id']}
      rename={(t) => send({ does: 'put', path: [...path, 'id'], value: dashed(t) })}
      label="Short name"
    />
  );
}

/** A long list with one thing shown, that begins a new one with a name of its own. */
function Many({
  list,
  title,
  one,
  fresh,
  children,
}: {
  list: string;
  title: string;
  one: string;
  fresh: Readonly<Record<string, Json>>;
  children: (path: Path) => React.ReactNode;
}) {
  const { draft } = useForm();
  const [chosen, choose] = useState(0);
  return (
    <section className="sheet part" aria-labelledby={`map-${list}`}>
      <h2 id={`map-${list}`}>{title}</h2>
      <OneOf
        path={[list]}
        one={one}
        chosen={chosen}
        choose={choose}
        item={() => ({ ...fresh, id: freshId(idsOf(draft[list]), dashed(one)), name: '' })}
      >
        {children}
      </OneOf>
    </section>
  );
}

/** Jigs, trestles, cradles: what holds the wing before something is opened. */
export function SupportsIn() {
  return (
    <Many list="supports" title="Supports and jigs" one="support" fresh={{ side: 'both', set_up: {} }}>
      {(path) => <SupportFields path={path} />}
    </Many>
  );
}
function SupportFields({ path }: { path: Path }) {
  const rename = useRename(path, 'support');
  return (
    <>
      <div className="fields">
        <TextIn path={[...path, 'name']} label="Name" />
        <RenameIn always path={[...path, 'id']} rename={rename} label="Short name" />
        <ChoiceIn path={[...path, 'side']} label="Side" options={SIDES} />
        <ShortIn path={[...path, 'jig']} label="Kind of jig" hint="As the floor names it; none for trestles" />
        <HandsIn path={path} />
      </div>
      <ThreePointIn path={[...path, 'set_up']} of="Setting it up" />
      <NeedsIn path={[...path, 'needs']} title="Before it is set up" none="Nothing." />
    </>
  );
}

export function LooksIn() {
  const { draft } = useForm();
  const parts = things(draft.parts);
  return (
    <Many list="looks" title="Looks" one="look" fresh={{ minutes: {}, from: NO_SOURCE }}>
      {(path) => (
        <>
          <div className="fields">
            <TextIn path={[...path, 'name']} label="Name" />
            <IdOf path={path} />
            <ChoiceIn path={[...path, 'at']} label="It looks at" options={[...parts, ...things(draft.joins)]} />
            <TextIn path={[...path, 'method']} label="Method" />
            <FigureIn path={[...path, 'chance']} label="Chance of a finding" hint="0 to 1" />
            <MoneyIn path={[...path, 'now_cents']} label="A finding costs now" />
            <MoneyIn path={[...path, 'later_cents']} label="and later, wing closed" />
            <HandsIn path={path} />
            <YesIn path={[...path, 'before_closing']} label="Before the bay is closed, on every plan" />
            <YesIn path={[...path, 'always']} label="Always done where it is bare" />
          </div>
          <NeedsIn path={[...path, 'needs']} title="What bares it" none="Nothing: it is seen from outside." />
          <ThreePointIn path={[...path, 'minutes']} of="The look" />
          <OwnPart
            title="A finding adds"
            path={[...path, 'finding_work']}
            fresh={{}}
            add="A finding adds work of its own"
          >
            <ThreePointIn path={[...path, 'finding_work']} of="Work that a finding adds" />
          </OwnPart>
          <RowsOf
            path={[...path, 'finding_targets']}
            title="A finding asks for"
            add="A finding asks for another part"
            item={{ work: 'replace' }}
            one="part"
          >
            {(t) => (
              <>
                <ChoiceIn path={[...t, 'part']} label="Part" options={parts} />
                <ChoiceIn path={[...t, 'work']} label="Work" options={WORKS.filter((w) => w.value !== 'reach')} />
              </>
            )}
          </RowsOf>
          <SourceIn path={[...path, 'from']} of="chance and sums" />
        </>
      )}
    </Many>
  );
}

export function JobsIn() {
  const { draft } = useForm();
  return (
    <Many list="jobs" title="Small jobs for when it is open" one="job" fresh={{ minutes: {}, from: NO_SOURCE }}>
      {(path) => (
        <>
          <div className="fields">
            <TextIn path={[...path, 'name']} label="Name" />
            <IdOf path={path} />
            <ChoiceIn
              path={[...path, 'at']}
              label="It is at"
              options={[...things(draft.parts), ...things(draft.joins)]}
            />
            <MoneyIn path={[...path, 'parts_cents']} label="Its parts cost" />
            <MoneyIn path={[...path, 'later_cents']} label="On its own it will cost" hint="Access and all" />
            <FigureIn path={[...path, 'chance']} label="How surely its day comes" hint="0 to 1; sure, if empty" />
            <HandsIn path={path} />
          </div>
          <NeedsIn path={[...path, 'needs']} title="What it needs off or open" none="Nothing." />
          <ThreePointIn path={[...path, 'minutes']} of="The job" />
          <SourceIn path={[...path, 'from']} of="sums and times" />
        </>
      )}
    </Many>
  );
}

export function GatesIn() {
  return (
    <Many
      list="gates"
      title="Gates around the work"
      one="gate"
      fresh={{ before: 'prepare', who: 'shop', minutes: {}, from: NO_SOURCE }}
    >
      {(path) => (
        <>
          <div className="fields">
            <TextIn path={[...path, 'name']} label="Name" />
            <IdOf path={path} />
            <ChoiceIn path={[...path, 'before']} label="Passed before" options={STAGES} />
            <ChoiceIn path={[...path, 'who']} label="Done by" options={WHO} />
            <FigureIn path={[...path, 'wait_h']} label="Then it stands" unit="h" hint="Without hands" />
            <HandsIn path={path} />
            <YesIn path={[...path, 'duplicate']} label="By a second person who did none of the work" />
          </div>
          <ThreePointIn path={[...path, 'minutes']} of="The gate" />
          <StepsIn path={[...path, 'only_if']} title="Only where one of these is on the plan" />
          <SourceIn path={[...path, 'from']} of="this gate" />
        </>
      )}
    </Many>
  );
}

/** Orders that the maker or a kit states: they win over least cost. */
export function StatedIn() {
  const { draft } = useForm();
  const [chosen, choose] = useState(0);
  return (
    <section className="sheet part" aria-labelledby="map-stated">
      <h2 id="map-stated">Stated orders</h2>
      <p className="soft">An order stated by the maker or with a kit wins over the least cost.</p>
      <OneOf
        path={['stated']}
        one="stated order"
        chosen={chosen}
        choose={choose}
        item={() => ({ name: '', steps: [''], from: NO_SOURCE })}
      >
        {(path) => (
          <>
            <div className="fields">
              <TextIn path={[...path, 'name']} keep label="Name" />
              <ChoiceIn
                path={[...path, 'only_if']}
                label="Only where this is replaced"
                options={things(draft.parts)}
                empty="on every plan"
              />
            </div>
            <StepsIn path={[...path, 'steps']} title="Its order" />
            <SourceIn path={[...path, 'from']} of="this order" />
          </>
        )}
      </OneOf>
    </section>
  );
}

/** The shop's own times for one fastener of a kind; flips, tool changes, coating. */
export function TimesIn() {
  return (
    <section className="sheet part" aria-labelledby="map-times">
      <h2 id="map-times">Times for one fastener</h2>
      <div data-place="each" tabIndex={-1}>
        {FASTENERS.map((k) => (
          <More key={k.value} title={`One ${k.text}`} open={false}>
            <OwnPart title="" path={['each', k.value]} fresh={{ open: {}, close: {} }} add={`Times for one ${k.text}`}>
              {EACH.map(([field, text]) => (
                <OwnPart key={field} title="" path={['each', k.value, field]} fresh={{}} add={`${text}, one ${k.text}`}>
                  <ThreePointIn path={['each', k.value, field]} of={`${text}, one ${k.text}`} />
                </OwnPart>
              ))}
            </OwnPart>
          </More>
        ))}
      </div>
      <OwnPart title="Turning the wing" path={['flip']} fresh={{}} add="Times of its own for turning the wing">
        <ThreePointIn path={['flip']} of="Turning it over once" />
      </OwnPart>
      <OwnPart title="Tools" path={['tool_change']} fresh={{}} add="Times of its own for changing tools">
        <ThreePointIn path={['tool_change']} of="Changing tools once" />
      </OwnPart>
      <OwnPart
        title="Coating after the dry pass"
        path={['coating']}
        fresh={{ clean_each_join: {}, convert: {}, prime: {}, materials: [], from: NO_SOURCE }}
        add="What comes apart after the dry pass is coated"
      >
        <ThreePointIn path={['coating', 'clean_each_join']} of="Cleaning each row" />
        <ThreePointIn path={['coating', 'convert']} of="Conversion coat" />
        <ThreePointIn path={['coating', 'prime']} of="Primer" />
        <FigureIn path={['coating', 'dry_h']} label="Dries in" unit="h" />
        <SourceIn path={['coating', 'from']} of="the coating" />
      </OwnPart>
    </section>
  );
}
