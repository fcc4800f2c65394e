// npm run bench: every file in bench/, one after the other. Figures are printed; nothing is judged here.
// Words choose files; what begins with the first -- is handed on to them. Without a word the first option chooses:
// `npm run bench -- --psplib FOLDER`.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { begin, root } from './begin.mjs';

await begin();
const given = process.argv.slice(2);
const options = given.findIndex((a) => a.startsWith('--'));
const handed = options < 0 ? [] : given.slice(options);
const words = options < 0 ? given : given.slice(0, options);
const wanted = words.length || !handed.length ? words : [handed[0].slice(2)];
const files = readdirSync(join(root, 'bench')).filter(
  (f) => f.endsWith('.ts') && (!wanted.length || wanted.some((w) => f.includes(w))),
);
let bad = 0;
for (const f of files.sort()) {
  process.stdout.write(`\n== ${f}\n`);
  const r = spawnSync(process.execPath, ['--import', 'tsx', join(root, 'bench', f), ...handed], {
    cwd: root,
    stdio: 'inherit',
  });
  if (r.status !== 0) bad = 1;
}
process.exit(bad);
