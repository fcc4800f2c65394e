import { type KeyboardEvent, useRef } from 'react';
import type { Zone } from '../../sheets/model.ts';

export interface Choosing {
  /** Key of the stretch that is chosen; empty when none is. */
  readonly chosen: string;
  readonly choose: (key: string) => void;
}

/** The stretches of a picture as buttons: Tab leads to one, the arrow keys walk, Enter or Space chooses and lets go. */
export function Zones({ zones, height, choosing }: { zones: readonly Zone[]; height: number; choosing: Choosing }) {
  const group = useRef<SVGGElement>(null);
  const { chosen, choose } = choosing;
  const first = Math.max(
    0,
    zones.findIndex((z) => z.key === chosen),
  );
  const toggle = (key: string) => choose(key === chosen ? '' : key);
  const onKeyDown = (e: KeyboardEvent, at: number) => {
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: zones.length - 1 }[e.key];
    if (to !== undefined) {
      e.preventDefault();
      group.current?.querySelectorAll('rect')[Math.max(0, Math.min(to, zones.length - 1))]?.focus();
    } else if (e.key === 'Enter' || e.key === ' ') {
      e.preventDefault();
      toggle(zones[at]!.key);
    }
  };
  return (
    <g ref={group}>
      {zones.map((z, i) => (
        // biome-ignore lint/a11y/useSemanticElements: within a picture there is no button element
        <rect
          key={z.key}
          className={z.key === chosen ? 'zone chosen' : 'zone'}
          x={z.x}
          y={1}
          width={z.w}
          height={height - 2}
          role="button"
          aria-pressed={z.key === chosen}
          aria-label={z.text}
          tabIndex={i === first ? 0 : -1}
          onClick={() => toggle(z.key)}
          onKeyDown={(e) => onKeyDown(e, i)}
        >
          <title>{z.text}</title>
        </rect>
      ))}
    </g>
  );
}
