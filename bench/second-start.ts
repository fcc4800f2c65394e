import { Program } from '../e2e/program.ts';

/** First and second start of the built program on one data folder, and a start after kill -9. Milliseconds until the address is printed. */
const program = new Program();
try {
  const first = await program.start();
  await program.stop();
  const second = await program.start();
  await program.stop('SIGKILL');
  const third = await program.start();
  const ratio = (t: number) => (t / first).toFixed(2);
  console.log(`first start, new database   ${first.toFixed(0)} ms`);
  console.log(`second start                ${second.toFixed(0)} ms, ${ratio(second)} of the first`);
  console.log(`start after kill -9         ${third.toFixed(0)} ms, ${ratio(third)} of the first`);
} finally {
  await program.end();
}
