import { Invented } from '../../../parts/basis/invented.tsx';
import { ChoiceIn, DayIn, FigureIn, TextIn } from '../../../parts/write/inputs.tsx';
import type { Path } from '../../../parts/write/json.ts';
import { MoneyIn } from '../../../parts/write/money-in.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { ShortIn } from '../maps/fields.tsx';
import { ClockIn, SkillsIn, WeekdaysIn } from './inputs.tsx';

const HANDS = [
  { value: 'left', text: 'left wings' },
  { value: 'right', text: 'right wings' },
  { value: 'both', text: 'both hands' },
];
const SPAN = {};

/** Days on which somebody or something is away. */
function SpansIn({ path, title, one }: { path: Path; title: string; one: string }) {
  return (
    <RowsOf path={path} title={title} add={`Add ${one}`} item={SPAN} one={one}>
      {(p) => (
        <>
          <DayIn path={[...p, 'from']} label="From" />
          <DayIn path={[...p, 'to']} label="To, with this day" />
          <TextIn path={[...p, 'because']} label="Because" />
        </>
      )}
    </RowsOf>
  );
}

/** A floor: who works when, which jigs stand there, what an hour and a fastener cost. */
export function FloorFields() {
  return (
    <>
      <section className="sheet part" aria-labelledby="what">
        <h2 id="what">What it is</h2>
        <div className="fields">
          <TextIn path={['title']} label="Title" hint="It is kept under this name" whole />
          <TextIn path={['currency']} keep label="Currency" hint="As it is written after a sum" />
          <MoneyIn path={['hour_cents']} label="An hour of work" />
          <MoneyIn path={['jig_day_cents']} label="A day of a jig" />
          <MoneyIn path={['storage_day_cents']} label="A day of storage" />
          <Invented />
        </div>
        <SourceIn path={['from']} of="the floor" />
      </section>
      <section className="sheet part" aria-labelledby="crew">
        <h2 id="crew">Crew</h2>
        <RowsOf path={['crew']} title="Crew" add="Add a person" item={{ name: '', skills: [] }} one="person">
          {(p) => (
            <>
              <TextIn path={[...p, 'name']} keep label="Name" />
              <SkillsIn path={[...p, 'skills']} />
              <SpansIn path={[...p, 'off']} title="Away" one="days away" />
            </>
          )}
        </RowsOf>
      </section>
      <section className="sheet part" aria-labelledby="shifts">
        <h2 id="shifts">Shifts</h2>
        <RowsOf
          path={['shifts']}
          title="Shifts"
          add="Add a shift"
          item={{ weekdays: [1, 2, 3, 4, 5], from: '07:30', to: '16:30' }}
          one="shift"
        >
          {(p) => (
            <>
              <WeekdaysIn path={[...p, 'weekdays']} />
              <ClockIn path={[...p, 'from']} label="From" />
              <ClockIn path={[...p, 'to']} label="To" />
              <ClockIn path={[...p, 'break', 'from']} label="Break from" />
              <ClockIn path={[...p, 'break', 'to']} label="Break to" />
            </>
          )}
        </RowsOf>
        <SpansIn path={['closed']} title="Closed" one="closed days" />
      </section>
      <section className="sheet part" aria-labelledby="jigs">
        <h2 id="jigs">Jigs</h2>
        <RowsOf path={['jigs']} title="Jigs" add="Add a jig" item={{ hand: 'both' }} one="jig">
          {(p) => (
            <>
              <TextIn path={[...p, 'name']} keep label="Name" />
              <ShortIn path={[...p, 'id']} label="Short name" />
              <ShortIn path={[...p, 'kind']} label="Kind" hint="As maps name it: wing-jig" />
              <ChoiceIn path={[...p, 'hand']} label="Takes" options={HANDS} />
              <DayIn path={[...p, 'check_good_until']} label="Its check is good until" />
              <SpansIn path={[...p, 'booked']} title="Booked" one="booked days" />
            </>
          )}
        </RowsOf>
      </section>
      <section className="sheet part" aria-labelledby="prices">
        <h2 id="prices">Fasteners and consumables</h2>
        <div className="fields">
          <FigureIn path={['spares_share']} label="Spares over the count" hint="0.1 is a tenth; a tenth, if empty" />
        </div>
        <RowsOf path={['fasteners']} title="Fasteners" add="Add a fastener" item={{}} one="fastener">
          {(p) => (
            <>
              <TextIn path={[...p, 'code']} keep label="Part code" hint="Without its length" />
              <MoneyIn path={[...p, 'each_cents']} label="Each" />
              <FigureIn path={[...p, 'spares_share']} label="Spares over the count" />
              <FigureIn path={[...p, 'length_step_mm']} label="Lengths go by" unit="mm" />
            </>
          )}
        </RowsOf>
        <RowsOf path={['consumables']} title="Consumables" add="Add a consumable" item={{}} one="consumable">
          {(p) => (
            <>
              <TextIn path={[...p, 'name']} keep label="What" />
              <TextIn path={[...p, 'unit']} keep label="Unit" />
              <MoneyIn path={[...p, 'each_cents']} label="Each" />
            </>
          )}
        </RowsOf>
      </section>
    </>
  );
}
