import { ChoiceIn, TextIn } from './inputs.tsx';
import type { Path } from './json.ts';

export const KNOWN = [
  { value: 'read', text: 'read' },
  { value: 'second-hand', text: 'second-hand' },
  { value: 'memory', text: 'from memory' },
  { value: 'invented', text: 'made up' },
];
/** How well it is known is asked too: a form that begins with "read" would claim it unasked. */
export const NO_SOURCE = { source: '' } as const;

/** Where the figures above come from, and how well they are known. */
export function SourceIn({ path, of }: { path: Path; of: string }) {
  return (
    <fieldset className="source">
      <legend>Source of {of}</legend>
      <div className="fields">
        <TextIn path={[...path, 'source']} keep label="Source" hint="Document, or who says so" />
        <TextIn path={[...path, 'edition']} label="Edition" />
        <TextIn path={[...path, 'place']} label="Place in it" hint="Table, figure, page" />
        <ChoiceIn path={[...path, 'known']} label="How well known" options={KNOWN} />
      </div>
    </fieldset>
  );
}
