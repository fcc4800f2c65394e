import { aircraftSheet } from '../testing/sheets.ts';
import type { Stories } from './story.ts';
import { TitleBlock } from './title-block.tsx';

const long = {
  fields: aircraftSheet.titleBlock.fields.map((f) => ({
    ...f,
    value: `${f.value} with a name that no one would choose but that someone will have`,
    small: 'Aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa',
  })),
};
const stories: Stories = {
  part: 'Title block',
  stories: [
    { state: 'typical', Draw: () => <TitleBlock block={aircraftSheet.titleBlock} number="4f1c-09ab" /> },
    { state: 'empty', Draw: () => <TitleBlock block={{ fields: [] }} /> },
    {
      state: 'failing',
      Draw: () => <TitleBlock block={{ fields: [{ label: 'As of', value: 'no reading yet' }] }} />,
    },
    { state: 'overflowing', Draw: () => <TitleBlock block={long} /> },
  ],
};
export default stories;
