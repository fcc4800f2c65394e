const SILENT_MS = 1000;
const EVERY_MS = 500;

/**
 * Says on standard error how far a long answer is, once it takes longer than a second: over and over on one line where
 * a person watches, else a line at every tenth. Standard output holds the answer alone.
 */
export function progressLine(
  out: Pick<NodeJS.WriteStream, 'write'> & { readonly isTTY?: boolean | undefined } = process.stderr,
  now: () => number = () => performance.now(),
): (done: number, of: number) => void {
  const begun = now();
  let said = begun + SILENT_MS - EVERY_MS;
  let tenth = 0;
  let open = false;
  return (done, of) => {
    const at = now();
    const last = done >= of;
    if (out.isTTY) {
      if ((last && open) || (!last && at - said >= EVERY_MS)) {
        out.write(`\r${done} of ${of} lives drawn${last ? '\n' : ''}`);
        said = at;
        open = !last;
      }
      return;
    }
    const reached = Math.floor((10 * done) / of);
    if (at - begun >= SILENT_MS && reached > tenth && !last) out.write(`${done} of ${of} lives drawn\n`);
    tenth = reached;
  };
}
