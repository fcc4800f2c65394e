// npm run bench: every file in bench/, one after the other. Figures are printed; nothing is judged here.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { begin, root } from './begin.mjs';

await begin();
const wanted = process.argv.slice(2);
const files = readdirSync(join(root, 'bench')).filter(
  (f) => f.endsWith('.ts') && (!wanted.length || wanted.some((w) => f.includes(w))),
);
let bad = 0;
for (const f of files.sort()) {
  process.stdout.write(`\n== ${f}\n`);
  const r = spawnSync(process.execPath, ['--import', 'tsx', join(root, 'bench', f)], { cwd: root, stdio: 'inherit' });
  if (r.status !== 0) bad = 1;
}
process.exit(bad);
