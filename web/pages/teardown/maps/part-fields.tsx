import { useForm } from '../../../parts/write/context.tsx';
import { ChoiceIn, FigureIn, RenameIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, type Path, tableOf } from '../../../parts/write/json.ts';
import { MoneyIn } from '../../../parts/write/money-in.tsx';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { ThreePointIn } from '../../../parts/write/three-point-in.tsx';
import { KINDS, SIDES } from './choices.ts';
import { HandsIn, YesIn } from './fields.tsx';
import { NeedsIn } from './needs-in.tsx';
import { PointsIn } from './points-in.tsx';
import { useRename } from './use-rename.ts';

/** One part: what it is, where it lies, what is in its way, how long it takes. */
export function PartFields({ path }: { path: Path }) {
  const { draft } = useForm();
  const rename = useRename(path, 'off');
  const stays = tableOf(at(draft, path)).stays === true;
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
        <ChoiceIn path={[...path, 'kind']} label="Kind" options={KINDS} />
        <ChoiceIn path={[...path, 'side']} label="Side" options={SIDES} />
        <FigureIn path={[...path, 'mass_kg']} label="Mass" unit="kg" />
        <FigureIn path={[...path, 'level']} label="Level" hint="0 lowest; drawn over what is lower" />
        <YesIn path={[...path, 'stays']} label="It stays: the rest comes off it" />
        {stays ? null : <YesIn path={[...path, 'holds_fuel']} label="Holds fuel" hint="Drained and purged first" />}
      </div>
      <PointsIn path={[...path, 'outline']} title="Outline" />
      {stays ? null : (
        <NeedsIn
          path={[...path, 'needs']}
          title="First, besides every row that holds it"
          none="Nothing more: it comes off once its rows are open."
        />
      )}
      <ThreePointIn path={[...path, 'take_off']} of="Taking it off" />
      <ThreePointIn path={[...path, 'put_back']} of="Putting it back" />
      <div className="fields">
        <HandsIn path={path} />
      </div>
      <OwnPart title="A new one" path={[...path, 'order']} fresh={{ lead_days: {} }} add="It can be ordered new">
        <div className="fields">
          <TextIn path={[...path, 'order', 'code']} keep label="Part code" />
          <MoneyIn path={[...path, 'order', 'price_low_cents']} label="Price, at least" />
          <MoneyIn path={[...path, 'order', 'price_high_cents']} label="Price, at most" />
          <FigureIn path={[...path, 'order', 'lead_days', 'low']} label="Comes in, at least" unit="days" />
          <FigureIn path={[...path, 'order', 'lead_days', 'likely']} label="Comes in, most likely" unit="days" />
          <FigureIn path={[...path, 'order', 'lead_days', 'high']} label="Comes in, at most" unit="days" />
        </div>
      </OwnPart>
    </>
  );
}
