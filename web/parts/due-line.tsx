import type { DueMark } from '../../sheets/model.ts';

const box = ({ from, to }: DueMark) => `M${from} -.045L${to} -.045L${to} .045L${from} .045Z`;

/** A short ruler from today over the next years. Overdue hangs over its left end. */
export function DueLine({ marks, text }: { marks: readonly DueMark[]; text: string }) {
  return (
    <svg className="due-line" viewBox="-0.14 -0.09 1.18 0.18" role="img" aria-label={text}>
      <path className="thin stroke-soft fill-none" strokeWidth="1" d="M0 0.01L1 0.01M0 -.05L0 .05" />
      {marks.map((m) => {
        const key = `${m.kind} ${m.from} ${m.to} ${m.treatAs}`;
        const ink = m.treatAs ? 'dye' : 'ink';
        if (m.kind === 'range')
          return <path key={key} className={`thin fill-dye-soft stroke-${ink}`} strokeWidth="1" d={box(m)} />;
        if (m.kind === 'overdue')
          return <path key={key} className={`thin fill-dye stroke-dye`} strokeWidth="2" d={box(m)} />;
        return (
          <path
            key={key}
            className={`thin fill-none stroke-${ink}`}
            strokeWidth={m.treatAs ? '3' : '2'}
            d={`M${m.from} -.07L${m.from} .07`}
          />
        );
      })}
    </svg>
  );
}
