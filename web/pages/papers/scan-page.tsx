import { useEffect, useRef, useState } from 'react';
import type { PaperPage } from '../../api/papers.ts';
import { shopPath } from '../../api/shops.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { drawPage } from './pdf.ts';
import { byKey, enlarge, move, transformOf, turn, type View, WHOLE } from './view.ts';

type Shown = Pick<PaperPage, 'sha256' | 'mediaType' | 'title' | 'page' | 'inFile'>;

/** One page of a book: turned, enlarged and moved with mouse, touch and keys. */
export function ScanPage({ shop, page }: { shop: string; page: Shown }) {
  const [view, setView] = useState<View>(WHOLE);
  const frame = useRef<HTMLElement>(null);
  const paper = useRef<HTMLDivElement>(null);
  const fingers = useRef(new Map<number, { x: number; y: number }>());
  useEffect(() => {
    if (paper.current) paper.current.style.transform = transformOf(view);
  }, [view]);
  const middle = (x: number, y: number) => {
    const box = frame.current?.getBoundingClientRect();
    return box ? { x: x - box.left - box.width / 2, y: y - box.top - box.height / 2 } : { x: 0, y: 0 };
  };
  useEffect(() => {
    const el = frame.current;
    if (!el) return;
    const wheel = (e: WheelEvent) => {
      if (!e.ctrlKey && !e.metaKey) return;
      e.preventDefault();
      setView((v) => enlarge(v, e.deltaY < 0 ? 1.15 : 1 / 1.15, middle(e.clientX, e.clientY)));
    };
    el.addEventListener('wheel', wheel, { passive: false });
    return () => el.removeEventListener('wheel', wheel);
  });
  const drag = (e: React.PointerEvent) => {
    const last = fingers.current.get(e.pointerId);
    if (!last) return;
    const now = { x: e.clientX, y: e.clientY };
    const other = [...fingers.current].find(([id]) => id !== e.pointerId)?.[1];
    fingers.current.set(e.pointerId, now);
    if (!other) return setView((v) => move(v, now.x - last.x, now.y - last.y));
    const apart = (p: { x: number; y: number }) => Math.hypot(p.x - other.x, p.y - other.y) || 1;
    setView((v) => enlarge(v, apart(now) / apart(last), middle((now.x + other.x) / 2, (now.y + other.y) / 2)));
  };
  const lift = (e: React.PointerEvent) => fingers.current.delete(e.pointerId);
  const name = `${page.title}${page.page ? `, page ${page.page}` : ''}`;
  return (
    <>
      <fieldset className="scan-tools">
        <legend className="hidden-text">The page</legend>
        <button type="button" onClick={() => setView(turn(view, -1))}>
          Turn left
        </button>
        <button type="button" onClick={() => setView(turn(view, 1))}>
          Turn right
        </button>
        <button type="button" onClick={() => setView(enlarge(view, 1.25))}>
          Larger
        </button>
        <button type="button" onClick={() => setView(enlarge(view, 0.8))}>
          Smaller
        </button>
        <button type="button" onClick={() => setView({ ...WHOLE, turned: view.turned })}>
          Whole page
        </button>
      </fieldset>
      <section
        className="scan"
        ref={frame}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the page is moved by keys, so it takes the focus
        tabIndex={0}
        aria-label={`${name}; + and - enlarge, arrows move, R turns, 0 shows the whole page`}
        onKeyDown={(e) => {
          const next = e.ctrlKey || e.metaKey || e.altKey ? null : byKey(view, e.key);
          if (!next) return;
          e.preventDefault();
          setView(next);
        }}
        onPointerDown={(e) => {
          e.currentTarget.setPointerCapture(e.pointerId);
          fingers.current.set(e.pointerId, { x: e.clientX, y: e.clientY });
        }}
        onPointerMove={drag}
        onPointerUp={lift}
        onPointerCancel={lift}
      >
        <div className="scan-paper" ref={paper}>
          {page.mediaType === 'application/pdf' ? (
            <PdfPage url={shopPath(shop, 'files', page.sha256)} page={page.inFile} name={name} />
          ) : (
            <img src={shopPath(shop, 'files', page.sha256)} alt={name} draggable={false} />
          )}
        </div>
      </section>
    </>
  );
}

function PdfPage({ url, page, name }: { url: string; page: number; name: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [state, setState] = useState<unknown>('Opening the page ...');
  useEffect(() => {
    let here = true;
    const on = canvas.current;
    if (!on) return;
    setState('Opening the page ...');
    drawPage(url, page, on).then(
      () => here && setState(null),
      (e) => here && setState(e),
    );
    return () => {
      here = false;
    };
  }, [url, page]);
  return (
    <>
      {typeof state === 'string' ? <p role="status">{state}</p> : <ErrorNotice error={state} />}
      <canvas ref={canvas} role="img" aria-label={name} />
    </>
  );
}
