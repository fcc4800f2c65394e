import type { ReactNode } from 'react';
import type { Block, Sheet } from '../../sheets/model.ts';
import { Answer } from './answer.tsx';
import { Cards } from './cards.tsx';
import { Caution, Warnings } from './caution.tsx';
import { Findings } from './findings.tsx';
import { KeyValue } from './key-value.tsx';
import { Picture } from './picture.tsx';
import { Prose } from './prose.tsx';
import { Table } from './table.tsx';
import { TitleBlock } from './title-block.tsx';
import { Working } from './working.tsx';

export function BlockView({ block }: { block: Block }) {
  switch (block.block) {
    case 'table':
      return <Table block={block} />;
    case 'key-value':
      return <KeyValue block={block} />;
    case 'findings':
      return <Findings block={block} />;
    case 'picture':
      return <Picture block={block} />;
    case 'prose':
      return <Prose block={block} />;
    case 'cards':
      return <Cards block={block} />;
  }
}

/** Where a block stands on the page: over its whole width, or beside another. */
export function widthOf(block: Block): 'wide' | 'main' | 'side' {
  if (block.block === 'picture') return block.scene.width >= 800 ? 'wide' : 'main';
  if (block.block === 'table') return block.wide || block.columns.length > 3 ? 'wide' : 'side';
  return block.block === 'key-value' ? 'side' : 'wide';
}

export function Blocks({ blocks, idOf }: { blocks: readonly Block[]; idOf?: (block: Block) => string | undefined }) {
  return (
    <div className="blocks">
      {blocks.map((b, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two blocks may bear one title; their order is the sheet's
        <section className={`sheet ${widthOf(b)}`} id={idOf?.(b)} key={`${b.title} ${i}`}>
          <BlockView block={b} />
        </section>
      ))}
    </div>
  );
}

/** A whole sheet: title block, answer, blocks, working, caution. */
export function SheetView({
  sheet,
  idOf,
  after,
  level,
}: {
  sheet: Sheet;
  idOf?: (block: Block) => string | undefined;
  after?: ReactNode;
  /** 2 where the page has a heading of its own. */
  level?: 1 | 2;
}) {
  return (
    <>
      <TitleBlock block={sheet.titleBlock} number={sheet.number} />
      <Answer answer={sheet.answer} because={sheet.because} see={sheet.see} level={level} />
      {after}
      <Warnings warnings={sheet.warnings} />
      <Blocks blocks={sheet.blocks} {...(idOf ? { idOf } : {})} />
      {sheet.working.length > 0 ? (
        <details className="sheet">
          <summary>Follow the figures to the log</summary>
          <Working steps={sheet.working} />
        </details>
      ) : null}
      <Caution text={sheet.caution} />
    </>
  );
}
