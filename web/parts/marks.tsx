import type { Mark } from '../../sheets/model.ts';

const classes = (m: { stroke: string; fill: string }) => `stroke-${m.stroke} fill-${m.fill}`;

/** One mark of a scene. `hatch` names the pattern that means "no paper for this". */
export function MarkView({ mark, hatch }: { mark: Mark; hatch: string }) {
  if (mark.is === 'text')
    return (
      <text
        x={mark.x}
        y={mark.y}
        className={`fill-${mark.ink}`}
        fontSize={mark.size}
        fontWeight={mark.bold ? 600 : 400}
        textAnchor={mark.anchor}
        data-of={mark.id}
      >
        {mark.text}
      </text>
    );
  const fill = mark.fill === 'hatch' ? { fill: `url(#${hatch})` } : {};
  const title = mark.title ? <title>{mark.title}</title> : null;
  const common = { className: classes(mark), strokeWidth: mark.width, 'data-of': mark.id, ...fill };
  if (mark.is === 'rect')
    return (
      <rect x={mark.x} y={mark.y} width={mark.w} height={mark.h} {...common}>
        {title}
      </rect>
    );
  if (mark.is === 'circle')
    return (
      <circle cx={mark.x} cy={mark.y} r={mark.r} {...common}>
        {title}
      </circle>
    );
  return (
    <path d={mark.d} strokeDasharray={mark.dash} {...common}>
      {title}
    </path>
  );
}
