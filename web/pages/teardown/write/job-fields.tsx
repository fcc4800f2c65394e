import { EdgeFields } from './edge-fields.tsx';
import { ExtraFields } from './extra-fields.tsx';
import { FloorFields } from './floor-fields.tsx';
import { QuoteFields } from './quote-fields.tsx';
import { WhatFields } from './what-fields.tsx';

/** A teardown job, from what has to come off to the terms of its quote. */
export function JobFields() {
  return (
    <>
      <WhatFields />
      <ExtraFields />
      <QuoteFields />
      <EdgeFields />
      <FloorFields />
    </>
  );
}
