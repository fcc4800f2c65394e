import { useId } from 'react';
import { useForm } from '../../../parts/write/context.tsx';
import { ChoiceIn, DayIn, FigureIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, tableOf, textOf } from '../../../parts/write/json.ts';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useChoices } from './choices.ts';

const C = ['chance'] as const;
/** As a document without it has it. */
const USUAL = { seed: 1, runs: 2000, common: 0.15 };

/** Other work that takes a jig, how the finish is drawn, and what a document brought along as done. */
export function FloorFields() {
  const { draft } = useForm();
  const { floors } = useChoices();
  const title = useId();
  const floor = tableOf(at(draft, ['floor']));
  const own = listOf(floor.jigs).map(tableOf);
  const jigs = floors.find((f) => f.name === floor.kept)?.jigs ?? own.map((j) => ({ id: j.id, name: j.name }));
  const recorded = listOf(draft.recorded).length;
  return (
    <section className="sheet part" aria-labelledby={title}>
      <h2 id={title}>Other work, and chance</h2>
      <p className="soft">
        Kept jobs of the shop meet in the calendar by themselves. What else takes a jig stands here, and how the days of
        P50 and P80 are drawn.
      </p>
      <RowsOf
        path={['others']}
        title="Other work on a jig"
        add="Add other work on a jig"
        one="work"
        item={{ name: '' }}
      >
        {(row) => (
          <>
            <TextIn path={[...row, 'name']} keep label="Work" />
            <ChoiceIn
              path={[...row, 'jig']}
              label="Jig"
              options={jigs.map((j) => ({ value: textOf(j.id), text: textOf(j.name) }))}
            />
            <DayIn path={[...row, 'from']} label="From" />
            <DayIn path={[...row, 'to']} label="To" />
          </>
        )}
      </RowsOf>
      <OwnPart title="Chance" path={C} fresh={USUAL} add="Say how chance is drawn">
        <div className="fields">
          <FigureIn path={[...C, 'runs']} label="Draws" hint="100 to 100 000" />
          <FigureIn path={[...C, 'seed']} label="Seed" hint="The same seed draws the same days" />
          <FigureIn
            path={[...C, 'common']}
            label="Spread of the shared cause"
            hint="0 to 1: crew, access and weather stretch all times together"
          />
        </div>
      </OwnPart>
      {recorded ? (
        <p className="soft">
          This document brings {recorded === 1 ? '1 record' : `${recorded} records`} of work with it; they stay with it.
        </p>
      ) : null}
    </section>
  );
}
