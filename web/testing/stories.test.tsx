import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { Router } from 'wouter';
import { Given } from './given.tsx';
import { allStories } from './story-files.ts';

const web = new URL('..', import.meta.url).pathname;
const files = readdirSync(web, { recursive: true, encoding: 'utf8' })
  .filter((f) => f.endsWith('.tsx'))
  .sort();
const isStory = (f: string) => f.endsWith('.stories.tsx');

/** What a file draws: the files that it imports, and what those draw. */
function reached(from: string, seen: Set<string>): void {
  if (seen.has(from)) return;
  seen.add(from);
  const text = readFileSync(join(web, from), 'utf8');
  for (const [, to] of text.matchAll(/from '(\.[^']+\.tsx)'/g))
    reached(relative(web, join(web, dirname(from), to!)), seen);
}

/** Files that draw nothing of their own: they ask the server and hand the answer to parts that have stories. */
const ASK_AND_HAND_ON = [
  'app.tsx',
  'main.tsx',
  'pages/aircraft/aircraft.tsx',
  'pages/compliance/approvals.tsx',
  'pages/compliance/compliance.tsx',
  'pages/directive/directive.tsx',
  'pages/directive/list.tsx',
  'pages/directive/write/write-page.tsx',
  'pages/directive/write/writer.tsx',
  'pages/fleet/due.tsx',
  'pages/fleet/fleet-frame.tsx',
  'pages/fleet/fleet.tsx',
  'pages/fleet/readings.tsx',
  'pages/growth/aircraft-growth.tsx',
  'pages/growth/chance.tsx',
  'pages/growth/growth.tsx',
  'pages/growth/list.tsx',
  'pages/growth/write/write-page.tsx',
  'pages/import/caller.tsx',
  'pages/import/import.tsx',
  'pages/letter/letter.tsx',
  'pages/papers/papers.tsx',
  'pages/reading/manual.tsx',
  'pages/reading/reading.tsx',
  'pages/start/nothing-here.tsx',
  'pages/start/start.tsx',
  'pages/stories/stories.tsx',
  'pages/teardown/aircraft-teardown.tsx',
  'pages/teardown/calendar.tsx',
  'pages/teardown/floors/floor.tsx',
  'pages/teardown/job.tsx',
  'pages/teardown/list.tsx',
  'pages/teardown/maps/map.tsx',
  'pages/teardown/maps/write-page.tsx',
  'pages/teardown/wing/wing-page.tsx',
  'pages/teardown/write/write-page.tsx',
  'pages/usage/aircraft-usage.tsx',
  'pages/usage/list.tsx',
  'pages/usage/usage.tsx',
  'pages/usage/write/write-page.tsx',
  'pages/what-if/what-if.tsx',
  'parts/basis/basis-list-page.tsx',
  'parts/basis/basis-page.tsx',
  'parts/basis/write-page.tsx',
  'parts/basis/writer.tsx',
  'parts/page.tsx',
];

test('every part that draws has stories', () => {
  const drawn = new Set<string>();
  for (const f of files.filter(isStory)) reached(f, drawn);
  const lacking = files.filter((f) => !/\.(stories|test)\.tsx$/.test(f) && !drawn.has(f));
  expect(lacking).toEqual(ASK_AND_HAND_ON.filter((f) => !drawn.has(f)));
  expect(ASK_AND_HAND_ON.filter((f) => !files.includes(f))).toEqual([]);
});
test('every shared part is named by a story, or stands within one that is', () => {
  const within = [
    'busy-button',
    'finding-code',
    'fold',
    'folded-rows',
    'head',
    'long-table-line',
    'marks',
    'page',
    'zones',
  ];
  const named = files
    .filter(isStory)
    .map((f) => readFileSync(join(web, f), 'utf8'))
    .join('\n');
  const parts = readdirSync(join(web, 'parts'))
    .filter((f) => f.endsWith('.tsx') && !isStory(f))
    .map((f) => f.replace('.tsx', ''));
  expect(parts.filter((p) => !new RegExp(`/${p}\\.tsx'`).test(named))).toEqual(within);
});

describe.each(allStories)('$part', ({ part, stories, cannot }) => {
  test('each state is shown or ruled out, under a name of its own', () => {
    const states = [...new Set(stories.map((s) => s.shows)), ...Object.keys(cannot)];
    expect(states.sort()).toEqual(['empty', 'failing', 'overflowing', 'typical']);
    expect(new Set(stories.map((s) => s.state)).size).toBe(stories.length);
    expect(allStories.filter((s) => s.part === part)).toHaveLength(1);
    for (const because of Object.values(cannot)) expect(because).toMatch(/^[A-Z].{15,}\.$/);
  });
  test.each(stories)('$state: draws, without an inline style, every field with its label', ({ Draw }) => {
    const html = renderToStaticMarkup(
      <Router ssrPath="/own/aircraft">
        <Given>
          <Draw />
        </Given>
      </Router>,
    );
    expect(html).not.toContain('style=');
    expect(html).not.toMatch(/undefined|NaN|\[object/);
    const labelled = new Set([...html.matchAll(/<label[^>]* for="([^"]+)"/g)].map((m) => m[1]));
    for (const [, id] of html.matchAll(/<(?:input|select|textarea) id="([^"]+)"/g)) expect(labelled).toContain(id);
    for (const [, ids] of html.matchAll(/aria-describedby="([^"]+)"/g))
      for (const id of ids!.split(' ')) expect(html).toContain(`id="${id}"`);
  });
});
