// Finds a Chromium for the browser tests, or installs the Debian package where that is possible.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** @returns path of an executable, or null with a sentence said on the terminal */
export function findChromium() {
  const found = () => PLACES.find((p) => p && existsSync(p));
  if (found()) return found();
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    process.stdout.write('Installing Chromium for the browser tests ...\n');
    const apt = (...args) =>
      spawnSync('apt-get', args, { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    apt('update', '-qq');
    apt('install', '-y', '-qq', 'chromium');
    if (found()) return found();
  }
  process.stdout.write(
    'No Chromium was found: install the package chromium, or set CHROMIUM to its path. The browser tests are not run.\n',
  );
  return null;
}
