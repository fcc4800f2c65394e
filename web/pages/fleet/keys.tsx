import { type RefObject, useEffect, useState } from 'react';

const KEPT = 'sparwright.slash';
const typing = (at: EventTarget | null): boolean =>
  at instanceof HTMLElement && at.closest('input, select, textarea, [contenteditable]') !== null;

/** The keys of the page, in one line. The single character can be turned off: some speak or slip into the keyboard. */
export function Keys({ box }: { box?: RefObject<HTMLInputElement | null> }) {
  const [slash, setSlash] = useState(() => kept() !== 'off');
  useEffect(() => {
    if (!slash || !box) return;
    const onKeyDown = (e: KeyboardEvent) => {
      if (e.key !== '/' || e.ctrlKey || e.metaKey || e.altKey || typing(e.target)) return;
      e.preventDefault();
      box.current?.focus();
      box.current?.select();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [slash, box]);
  const turn = () => {
    keep(slash ? 'off' : 'on');
    setSlash(!slash);
  };
  return (
    <div className="keys no-print">
      <p>
        Keys: {slash && box ? <KeyWord word="/" does="search" /> : null}
        <KeyWord word="&uarr; &darr;" does="row" />
        <KeyWord word="Home End" does="first, last" />
        <KeyWord word="Enter" does="open" />
        {box ? <KeyWord word="Esc" does="show all" /> : null}
      </p>
      {box ? (
        <button type="button" className="quiet" onClick={turn}>
          {slash ? 'Turn the key / off' : 'Turn the key / on'}
        </button>
      ) : null}
    </div>
  );
}

function KeyWord({ word, does }: { word: string; does: string }) {
  return (
    <span className="key">
      <kbd>{word}</kbd> {does}
    </span>
  );
}

function kept(): string | null {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    return null;
  }
}
function keep(value: string): void {
  try {
    localStorage.setItem(KEPT, value);
  } catch {
    // A browser that keeps nothing: the choice holds as long as the page.
  }
}
