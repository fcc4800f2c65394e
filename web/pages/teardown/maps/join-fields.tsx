import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { ChoiceIn, FigureIn, RenameIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { More } from '../../../parts/write/more.tsx';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { ThreePointIn } from '../../../parts/write/three-point-in.tsx';
import { FASTENERS, HEADS, SIDES } from './choices.ts';
import { HandsIn, YesIn } from './fields.tsx';
import { NeedsIn } from './needs-in.tsx';
import { PointsIn } from './points-in.tsx';
import { useRename } from './use-rename.ts';

export const EACH = [
  ['open', 'Out'],
  ['clip', 'Temporary fasteners'],
  ['drill', 'Match-drilling'],
  ['deburr', 'Chips out and deburring'],
  ['close', 'Closing'],
] as const;

/** One row of fasteners through its stack. */
export function JoinFields({ path }: { path: Path }) {
  const { draft } = useForm();
  const rename = useRename(path, 'open');
  const join = tableOf(at(draft, path));
  const parts = listOf(draft.parts).map(tableOf);
  const options = parts.map((p) => ({ value: textOf(p.id), text: textOf(p.name) || textOf(p.id) }));
  const f = [...path, 'fasteners'];
  return (
    <>
      <div className="fields">
        <TextIn path={[...path, 'name']} label="Name" />
        <RenameIn
          always
          path={[...path, 'id']}
          rename={rename}
          label="Short name"
          hint="Other things follow when it changes"
        />
        <ChoiceIn path={[...path, 'side']} label="Side" options={SIDES} />
      </div>
      <RowsOf path={[...path, 'layers']} title="Stack, from the head side" add="Add a layer" item="" one="layer">
        {(layer, i) => <ChoiceIn path={layer} label={`Layer ${i + 1}`} options={options} />}
      </RowsOf>
      <PointsIn path={[...path, 'line']} title="Where it runs" />
      <div className="fields">
        <ChoiceIn path={[...f, 'kind']} label="Fasteners" options={FASTENERS} />
        <FigureIn path={[...f, 'count']} label="How many" />
        <TextIn path={[...f, 'code']} keep label="Part code" hint="Without its length" />
        <FigureOf path={[...f, 'diameter_mm']} label="Diameter" />
        <FigureOf path={[...f, 'grip_mm']} label="Grip" hint="Thickness of the whole stack" />
        <ChoiceIn path={[...f, 'head']} label="Head" options={HEADS} empty="protruding" />
        <FigureIn path={[...f, 'rows']} label="Lines of fasteners" hint="A doubled pitch shows a splice" />
        <FigureOf path={[...f, 'pitch_mm']} label="Pitch" />
      </div>
      <NeedsIn
        path={[...path, 'needs']}
        title="Before it is opened"
        none="Nothing: it can be opened where the wing stands."
      />
      <NeedsIn
        path={[...path, 'close_needs']}
        title="Still off when it is closed"
        none="Nothing: the bucking bar has its way, or none is needed."
      />
      <div className="fields">
        <HandsIn path={path} />
        <FigureIn path={[...path, 'spoil_chance']} label="Chance that one hole is spoiled" hint="0 to 1, for each" />
        <YesIn path={[...path, 'jig_before_rivets']} label="In the jig and measured before it is riveted" />
        <YesIn path={[...path, 'closing_row']} label="Closes a bay: riveted last" />
        <YesIn path={[...path, 'attach']} label="Attach bolts: holes never opened, one at a time" />
      </div>
      <OwnPart title="State of its holes" path={[...path, 'holes']} fresh={{}} add="Its holes are not all final">
        <div className="fields">
          <FigureIn path={[...path, 'holes', 'pilot']} label="Pilot" />
          <FigureIn path={[...path, 'holes', 'final']} label="Final" />
          <FigureIn path={[...path, 'holes', 'elongated']} label="Elongated" />
          <FigureIn path={[...path, 'holes', 'oversize']} label="Oversize" />
        </div>
      </OwnPart>
      <OwnPart title="Sealant" path={[...path, 'sealant']} fresh={{}} add="It is sealed">
        <div className="fields">
          <TextIn path={[...path, 'sealant', 'name']} keep label="Sealant" />
          <FigureIn path={[...path, 'sealant', 'working_life_min']} label="Working life" unit="min" />
          <FigureIn path={[...path, 'sealant', 'cure_h']} label="Cures in" unit="h" />
        </div>
      </OwnPart>
      <More title="Times of the whole row, where they are not count times each" open={join.row !== undefined}>
        {EACH.map(([field, text]) => (
          <OwnPart key={field} title="" path={[...path, 'row', field]} fresh={{}} add={`${text}: a time of its own`}>
            <ThreePointIn path={[...path, 'row', field]} of={text} />
          </OwnPart>
        ))}
      </More>
      <RowsOf
        path={[...path, 'consumables']}
        title="What goes with it"
        add="Add what goes with it"
        item={{}}
        one="consumable"
      >
        {(c) => (
          <>
            <TextIn path={[...c, 'name']} keep label="What" />
            <FigureIn path={[...c, 'amount']} label="Amount" />
            <TextIn path={[...c, 'unit']} keep label="Unit" />
          </>
        )}
      </RowsOf>
    </>
  );
}
