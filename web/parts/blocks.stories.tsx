import { findings, seen } from '../testing/tables.ts';
import { Findings } from './findings.tsx';
import { KeyValue } from './key-value.tsx';
import { Prose } from './prose.tsx';
import { storiesOf } from './story.ts';

const word = 'A'.padEnd(100, 'a');
const pairs = [{ key: word, cell: { is: 'text', text: word } as const }];
const unknown = [{ key: 'Left', cell: { is: 'text', text: 'not known', small: 'the worse side counts' } as const }];
const text = { block: 'prose', title: 'Read back', paragraphs: ['It affects W4-T.'], list: ['First look'] } as const;
export default [
  storiesOf('Key value', [
    { state: 'typical', shows: 'typical', Draw: () => <KeyValue block={seen} /> },
    { state: 'empty', shows: 'empty', Draw: () => <KeyValue block={{ ...seen, pairs: [] }} /> },
    { state: 'failing', shows: 'failing', Draw: () => <KeyValue block={{ ...seen, pairs: unknown }} /> },
    { state: 'overflowing', shows: 'overflowing', Draw: () => <KeyValue block={{ ...seen, pairs }} /> },
  ]),
  storiesOf(
    'Findings',
    [
      { state: 'typical', shows: 'typical', Draw: () => <Findings block={findings} /> },
      { state: 'empty', shows: 'empty', Draw: () => <Findings block={{ ...findings, findings: [] }} /> },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => (
          <Findings
            block={{ ...findings, findings: findings.findings.map((f) => ({ ...f, text: word, remedy: word })) }}
          />
        ),
      },
    ],
    { failing: 'A finding is what failed; the typical story shows one.' },
  ),
  storiesOf(
    'Prose',
    [
      { state: 'typical', shows: 'typical', Draw: () => <Prose block={text} /> },
      {
        state: 'empty',
        shows: 'empty',
        Draw: () => <Prose block={{ ...text, title: '', list: [], paragraphs: [] }} />,
      },
      {
        state: 'overflowing',
        shows: 'overflowing',
        Draw: () => <Prose block={{ ...text, title: word, paragraphs: ['It affects W4-T. '.repeat(60), word] }} />,
      },
    ],
    { failing: 'It is text and computes nothing.' },
  ),
];
