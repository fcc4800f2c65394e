import { useState } from 'react';
import { drawingFrame, freshLine, freshOutline, mirrored } from '../../../../sheets/scenes/map-drawing.ts';
import { Invented } from '../../../parts/basis/invented.tsx';
import { useForm } from '../../../parts/write/context.tsx';
import { NamesIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, type Json, listOf, tableOf, textOf } from '../../../parts/write/json.ts';
import { OneOf } from '../../../parts/write/one-of.tsx';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { JoinFields } from './join-fields.tsx';
import { GatesIn, JobsIn, LooksIn, StatedIn, SupportsIn, TimesIn } from './more-fields.tsx';
import { freshId, idsOf } from './needs.ts';
import { PartFields } from './part-fields.tsx';
import { type ChosenThing, PlanEditor } from './plan-editor.tsx';

type Side = 'left' | 'right' | 'both';
const points = (p: readonly (readonly [number, number])[]): Json => p.map((q) => [...q]);

/** A structure map: drawn, and filled in. */
export function MapFields() {
  const { draft, send } = useForm();
  const [first] = useState(() => Math.min(1, listOf(draft.parts).length - 1));
  const [chosen, setChosen] = useState<ChosenThing>({ of: 'parts', index: first });
  const [shown, setShown] = useState({ parts: first, joins: 0 });
  const [side, setSide] = useState<Side>('left');
  /** What is chosen is drawn: a thing of the other wing turns the drawing to it. */
  const turn = (of: string) => {
    if ((of === 'left' || of === 'right') && side !== 'both') setSide(of);
  };
  const choose = (thing: ChosenThing) => {
    setChosen(thing);
    turn(textOf(tableOf(at(draft, [thing.of, thing.index])).side));
    setShown((s) => ({ ...s, [thing.of]: thing.index }));
  };
  const frame = () => drawingFrame(draft, side);
  const word = side === 'both' ? 'left' : side;
  const newPart = (): Json => ({
    id: freshId(idsOf(draft.parts), `${word}-part`),
    name: '',
    kind: 'other',
    side: word,
    outline: points(freshOutline(frame())),
    take_off: {},
    put_back: {},
  });
  const newJoin = (): Json => {
    const first = textOf(tableOf(at(draft, ['parts', shown.parts])).id);
    return {
      id: freshId(idsOf(draft.joins), `${word}-row`),
      name: '',
      side: word,
      layers: [first, ''],
      line: points(freshLine(frame())),
      fasteners: { kind: 'solid_rivet', code: '' },
    };
  };
  const mirror = (of: 'parts' | 'joins') => {
    const copy = mirrored(at(draft, [of, shown[of]])) as Json;
    const id = textOf(tableOf(copy).id);
    const there = idsOf(draft[of]).indexOf(id);
    if (there >= 0) return choose({ of, index: there });
    send({ does: 'add', path: [of], item: copy });
    choose({ of, index: listOf(draft[of]).length });
    turn(textOf(tableOf(copy).side));
  };
  const handed = (of: 'parts' | 'joins') =>
    ['left', 'right'].includes(textOf(tableOf(at(draft, [of, shown[of]])).side)) ? (
      <button type="button" className="quiet" onClick={() => mirror(of)}>
        Copy to the other wing
      </button>
    ) : null;
  return (
    <>
      <section className="sheet part" aria-labelledby="what">
        <h2 id="what">What it is</h2>
        <div className="fields">
          <TextIn path={['title']} label="Title" hint="Type of wing; it is kept under this name" whole />
          <NamesIn path={['models']} label="Models of aircraft" />
          <Invented />
        </div>
        <SourceIn path={['from']} of="the map" />
      </section>
      <section className="sheet part" aria-labelledby="plan">
        <h2 id="plan">The plan</h2>
        <PlanEditor chosen={chosen} choose={choose} side={side} setSide={setSide} />
      </section>
      <section className="sheet part" aria-labelledby="parts">
        <h2 id="parts">Parts</h2>
        <OneOf
          path={['parts']}
          one="part"
          item={newPart}
          chosen={shown.parts}
          choose={(index) => choose({ of: 'parts', index })}
          further={handed('parts')}
        >
          {(path) => <PartFields path={path} />}
        </OneOf>
      </section>
      <section className="sheet part" aria-labelledby="joins">
        <h2 id="joins">Rows of fasteners</h2>
        <OneOf
          path={['joins']}
          one="row"
          item={newJoin}
          chosen={shown.joins}
          choose={(index) => choose({ of: 'joins', index })}
          further={handed('joins')}
        >
          {(path) => <JoinFields path={path} />}
        </OneOf>
      </section>
      <SupportsIn />
      <LooksIn />
      <JobsIn />
      <GatesIn />
      <StatedIn />
      <TimesIn />
    </>
  );
}
