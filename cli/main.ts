import { Command, CommanderError } from 'commander';
import { isRefusal } from '../engine/index.ts';
import { PROGRAM } from '../server/version.ts';
import { answerCommands } from './answer.ts';
import { backupCommand, restoreCommand, verifyCommand } from './backup.ts';
import { complianceCommand } from './compliance.ts';
import { adoptCommand, tryCommand, withdrawCommand } from './directives.ts';
import { dueCommand } from './due.ts';
import { exampleCommand } from './example.ts';
import { importCommand } from './import.ts';
import { askCommand, keepCommand, takeBackCommand } from './kept.ts';
import { letterCommand } from './letter.ts';
import { schemaCommand } from './schema.ts';
import { serveCommand } from './serve.ts';

/** A reader that has seen enough, as `head`, closes the pipe: the rest is written to nobody, and that is no fault. */
process.stdout.on('error', (e: NodeJS.ErrnoException) => {
  if (e.code !== 'EPIPE') throw e;
});

/** Exit 0: an answer, also a bad one. 2: a refusal, in the three lines that the page shows too. 1: a fault. */
const program = new Command('sparwright')
  .description('The workbench of a light-aircraft structures shop. Figures inform; they approve nothing.')
  .version(PROGRAM)
  .exitOverride()
  .showHelpAfterError();
for (const add of [
  answerCommands,
  exampleCommand,
  schemaCommand,
  importCommand,
  tryCommand,
  adoptCommand,
  withdrawCommand,
  letterCommand,
  dueCommand,
  complianceCommand,
  keepCommand,
  takeBackCommand,
  askCommand,
  serveCommand,
  backupCommand,
  restoreCommand,
  verifyCommand,
])
  add(program);

try {
  await program.parseAsync();
} catch (e) {
  if (e instanceof CommanderError) process.exitCode = e.exitCode === 0 ? 0 : 2;
  else if (isRefusal(e)) {
    const { given, allowed, remedy, source } = e.detail;
    process.stderr.write(`Given:   ${given}\nAllowed: ${allowed}${source ? ` (${source})` : ''}\nDo:      ${remedy}\n`);
    process.exitCode = 2;
  } else {
    process.stderr.write(`${e instanceof Error ? e.message : String(e)}\n`);
    process.exitCode = 1;
  }
}
