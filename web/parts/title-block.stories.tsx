import { aircraftSheet } from '../testing/sheets.ts';
import { storiesOf } from './story.ts';
import { TitleBlock } from './title-block.tsx';

const long = {
  fields: aircraftSheet.titleBlock.fields.map((f) => ({
    ...f,
    value: `${f.value} with a name that no one would choose but that someone will have`,
    small: 'Aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa',
  })),
};
export default storiesOf('Title block', [
  {
    state: 'typical',
    shows: 'typical',
    Draw: () => <TitleBlock block={aircraftSheet.titleBlock} number="4f1c-09ab" />,
  },
  { state: 'empty', shows: 'empty', Draw: () => <TitleBlock block={{ fields: [] }} /> },
  {
    state: 'failing',
    shows: 'failing',
    Draw: () => <TitleBlock block={{ fields: [{ label: 'As of', value: 'no reading yet' }] }} />,
  },
  { state: 'overflowing', shows: 'overflowing', Draw: () => <TitleBlock block={long} /> },
]);
