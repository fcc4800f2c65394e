import { Link } from 'wouter';
import type { PictureBlock, Sheet, TableBlock } from '../../../sheets/model.ts';
import { Answer } from '../../parts/answer.tsx';
import { Caution, Warnings } from '../../parts/caution.tsx';
import { Empty } from '../../parts/empty.tsx';
import { Blocks } from '../../parts/sheet-view.tsx';
import { TitleBlock } from '../../parts/title-block.tsx';
import { FleetList } from './fleet-list.tsx';
import { Fresh } from './fresh.tsx';

const isBand = (b: Sheet['blocks'][number]): b is PictureBlock => b.block === 'picture' && !!b.scene.zones?.length;
const isTable = (b: Sheet['blocks'][number]): b is TableBlock => b.block === 'table';

/** Who is due when: the answer, the year band, the list; whatever else the sheet holds stands below. */
export function FleetView({
  shop,
  sheet,
  gone = false,
}: {
  shop: string;
  sheet: Sheet;
  /** The program does not answer: these are the last rows that were read. */
  gone?: boolean;
}) {
  const table = sheet.blocks.find(isTable);
  const band = sheet.blocks.find(isBand);
  const others = sheet.blocks.filter((b) => b !== table && b !== band);
  return (
    <>
      <TitleBlock block={sheet.titleBlock} number={sheet.number} />
      <Answer answer={sheet.answer} because={sheet.because} />
      <Warnings warnings={sheet.warnings} />
      <Fresh sheet={sheet} gone={gone} />
      {table?.rows.length ? <FleetList shop={shop} table={table} band={band} /> : <NoAircraft shop={shop} />}
      <Blocks blocks={others} />
      <Caution text={sheet.caution} />
    </>
  );
}

/** Nothing yet: the two ways in. */
function NoAircraft({ shop }: { shop: string }) {
  return (
    <Empty>
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
