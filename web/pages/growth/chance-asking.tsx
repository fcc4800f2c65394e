import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Input } from '../../parts/field.tsx';

/** How a question about chance stands. */
export type Drawing =
  | { readonly is: 'not asked' | 'asking' | 'stopped' }
  | { readonly is: 'drawing'; readonly done: number; readonly of: number; readonly gone?: boolean }
  | { readonly is: 'drawn'; readonly of: number }
  | { readonly is: 'failed'; readonly error: unknown };

export interface Wanted {
  readonly lives?: number;
  readonly seed?: number;
}
const count = (n: number): string => n.toLocaleString('en').replaceAll(',', '\u202f');
const figure = (form: FormData, name: string): number | undefined => {
  const text = String(form.get(name) ?? '').trim();
  return text === '' ? undefined : Number(text);
};

/** Asks for lives with scatter, says how far they are drawn, stops them. */
export function ChanceAsking({
  drawing,
  ask,
  stop,
}: {
  drawing: Drawing;
  ask: (wanted: Wanted) => void;
  stop: () => void;
}) {
  const busy = drawing.is === 'asking' || drawing.is === 'drawing';
  return (
    <section className="sheet no-print" aria-labelledby="with-scatter">
      <h2 id="with-scatter">With scatter</h2>
      <p className="soft">
        Draws many lives, each with its own growth rate, stress and toughness, by the scatter that the document states:
        how far apart they run, and how often a look would come too late.
      </p>
      <form
        aria-label="Lives with scatter"
        onSubmit={(e) => {
          e.preventDefault();
          const form = new FormData(e.currentTarget);
          const [lives, seed] = [figure(form, 'lives'), figure(form, 'seed')];
          ask({ ...(lives === undefined ? {} : { lives }), ...(seed === undefined ? {} : { seed }) });
        }}
      >
        <div className="fields">
          <Input
            label="Lives drawn"
            name="lives"
            type="number"
            min="10"
            max="1000000"
            step="1"
            hint="Empty: as the document says"
          />
          <Input
            label="Seed"
            name="seed"
            type="number"
            min="0"
            max="4294967295"
            step="1"
            hint="Empty: as the document says. The same seed draws the same lives"
          />
        </div>
        <div className="actions">
          <BusyButton busy={busy}>{drawing.is === 'asking' ? 'Asking ...' : 'Draw the lives'}</BusyButton>
          {drawing.is === 'drawing' ? (
            <button type="button" onClick={stop}>
              Stop
            </button>
          ) : null}
        </div>
      </form>
      <p role="status">{said(drawing)}</p>
      {drawing.is === 'drawing' ? (
        <label className="progress">
          <span>
            {count(drawing.done)} of {count(drawing.of)} lives
          </span>
          &ensp;
          <progress max={drawing.of} value={drawing.done} />
        </label>
      ) : null}
      {drawing.is === 'failed' ? <ErrorNotice error={drawing.error} /> : null}
    </section>
  );
}

/** Told once at each turn, not at every step of the count. */
function said(drawing: Drawing): string {
  if (drawing.is === 'drawing')
    return drawing.gone
      ? 'Sparwright does not answer at the moment. It is asked again; if it was closed, the lives are to be drawn anew.'
      : 'The lives are being drawn.';
  if (drawing.is === 'drawn') return `${count(drawing.of)} lives are drawn; what they tell stands below.`;
  return drawing.is === 'stopped' ? 'Stopped. Nothing of it is kept.' : '';
}
