import { Link } from 'wouter';
import type { PictureBlock, Sheet, TableBlock } from '../../../sheets/model.ts';
import { Answer } from '../../parts/answer.tsx';
import { Caution, Warnings } from '../../parts/caution.tsx';
import { Empty } from '../../parts/empty.tsx';
import { Blocks } from '../../parts/sheet-view.tsx';
import { TitleBlock } from '../../parts/title-block.tsx';
import { FleetList } from './fleet-list.tsx';
import { NotRefreshed } from './not-refreshed.tsx';

const isBand = (b: Sheet['blocks'][number]): b is PictureBlock => b.block === 'picture' && !!b.scene.zones?.length;
const isTable = (b: Sheet['blocks'][number]): b is TableBlock => b.block === 'table';

/** Who is due when: the answer, the year band, the list; whatever else the sheet holds stands below. */
export function FleetView({
  shop,
  sheet,
  error,
  again,
}: {
  shop: string;
  sheet: Sheet;
  error?: unknown;
  again?: () => void;
}) {
  const table = sheet.blocks.find(isTable);
  const band = sheet.blocks.find(isBand);
  const others = sheet.blocks.filter((b) => b !== table && b !== band);
  return (
    <>
      <TitleBlock block={sheet.titleBlock} number={sheet.number} />
      <Answer answer={sheet.answer} because={sheet.because} />
      <NotRefreshed error={error} day={sheet.titleBlock.fields.at(-1)?.value} again={again} />
      <Warnings warnings={sheet.warnings} />
      <p className="computing" role="status">
        {sheet.computing ?? ''}
      </p>
      {table?.rows.length ? (
        <FleetList shop={shop} table={table} band={band} />
      ) : (
        <NoAircraft shop={shop} words={table?.empty} />
      )}
      <Blocks blocks={others} />
      <Caution text={sheet.caution} />
    </>
  );
}

/** Nothing yet: the two ways in. */
function NoAircraft({ shop, words }: { shop: string; words: string | undefined }) {
  return (
    <Empty>
      {words ? <p>{words}</p> : null}
      <div className="actions">
        <Link className="button first" href={`/${shop}/import/caller`}>
          Answer a caller
        </Link>
        <Link className="button" href={`/${shop}/import`}>
          Drop a logbook
        </Link>
      </div>
    </Empty>
  );
}
