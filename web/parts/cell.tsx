import type { Cell } from '../../sheets/model.ts';
import { DueLine } from './due-line.tsx';
import { To } from './to.tsx';

/** One typed cell, in the reader's units as the sheet prepared it. */
export function CellView({ cell }: { cell: Cell | undefined }) {
  if (!cell || cell.is === 'nothing') return null;
  switch (cell.is) {
    case 'text':
    case 'quantity':
      return (
        <>
          {cell.text}
          {cell.small ? <small>{cell.small}</small> : null}
        </>
      );
    case 'standing':
      return (
        <span className={cell.act ? 'standing act' : 'standing'}>
          {cell.text}
          {cell.small ? <small>{cell.small}</small> : null}
        </span>
      );
    case 'link':
      return <To href={cell.href}>{cell.text}</To>;
    case 'due-line':
      return <DueLine marks={cell.marks} text={cell.text} />;
    default:
      return <>{cell.text}</>;
  }
}
