import { findings, seen } from '../testing/tables.ts';
import { Findings } from './findings.tsx';
import { KeyValue } from './key-value.tsx';
import { Prose } from './prose.tsx';
import type { Stories } from './story.ts';

const word = 'Aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa';
const pairs = [{ key: word, cell: { is: 'text', text: word } as const }];
const stories: Stories = {
  part: 'Key value, findings, prose',
  stories: [
    { state: 'key value, typical', Draw: () => <KeyValue block={seen} /> },
    { state: 'key value, empty', Draw: () => <KeyValue block={{ ...seen, pairs: [] }} /> },
    { state: 'key value, overflowing', Draw: () => <KeyValue block={{ ...seen, pairs }} /> },
    { state: 'findings, typical', Draw: () => <Findings block={findings} /> },
    { state: 'findings, empty', Draw: () => <Findings block={{ ...findings, findings: [] }} /> },
    {
      state: 'findings, overflowing',
      Draw: () => (
        <Findings
          block={{ ...findings, findings: findings.findings.map((f) => ({ ...f, text: word, remedy: word })) }}
        />
      ),
    },
    {
      state: 'prose, typical',
      Draw: () => (
        <Prose block={{ block: 'prose', title: 'Read back', paragraphs: ['It affects W4-T.'], list: ['First look'] }} />
      ),
    },
    {
      state: 'prose, overflowing',
      Draw: () => <Prose block={{ block: 'prose', title: word, paragraphs: ['It affects W4-T. '.repeat(60)] }} />,
    },
  ],
};
export default stories;
