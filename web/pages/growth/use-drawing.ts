import { useEffect, useRef, useState } from 'react';
import type { Sheet } from '../../../sheets/model.ts';
import { ServerGone, ServerSaidNo } from '../../api/client.ts';
import { type ChanceQuestion, drawLives, lookAt, stopWork } from '../../api/work.ts';
import type { Drawing } from './chance-asking.tsx';

const EVERY_MS = 300;
const GONE_MS = 2000;
const ignored = () => undefined;

/** Lives with scatter: asked for, looked at now and then until they are drawn, stopped when the page is left. */
export function useDrawing(shop: string, onSheet: (sheet: Sheet | null) => void) {
  const [drawing, setDrawing] = useState<Drawing>({ is: 'not asked' });
  const [work, setWork] = useState<string | null>(null);
  const told = useRef(onSheet);
  told.current = onSheet;
  const asked = useRef(0);

  useEffect(() => {
    if (work === null) return;
    let over = false;
    let timer: ReturnType<typeof setTimeout>;
    const look = async () => {
      let wait = EVERY_MS;
      try {
        const seen = await lookAt(work);
        if (over) return;
        if (seen.refusal) return end({ is: 'failed', error: new ServerSaidNo(seen.refusal, 422) });
        if (seen.sheet) {
          told.current(seen.sheet);
          return end({ is: 'drawn', of: seen.of });
        }
        setDrawing({ is: 'drawing', done: seen.done, of: seen.of });
      } catch (error) {
        if (over) return;
        if (!(error instanceof ServerGone)) return end({ is: 'failed', error });
        wait = GONE_MS;
        setDrawing((d) => (d.is === 'drawing' ? { ...d, gone: true } : d));
      }
      timer = setTimeout(() => void look(), wait);
    };
    const end = (how: Drawing) => {
      over = true;
      setDrawing(how);
      setWork(null);
    };
    void look();
    return () => {
      clearTimeout(timer);
      if (!over) void stopWork(work).catch(ignored);
      over = true;
    };
  }, [work]);

  useEffect(
    () => () => {
      asked.current = -1;
    },
    [],
  );

  return {
    drawing,
    ask: (question: ChanceQuestion): void => {
      const turn = ++asked.current;
      setDrawing({ is: 'asking' });
      setWork(null);
      told.current(null);
      drawLives(shop, question).then(
        (begun) => {
          if (turn !== asked.current) return void stopWork(begun.work).catch(ignored);
          setWork(begun.work);
        },
        (error: unknown) => {
          if (turn === asked.current) setDrawing({ is: 'failed', error });
        },
      );
    },
    stop: (): void => {
      setWork(null);
      setDrawing({ is: 'stopped' });
    },
  };
}
