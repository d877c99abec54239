import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from 'playwright-core';

const cacheFolder = fileURLToPath(new URL('../../.cache/', import.meta.url));
const systemNames = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];
const otherSystemPlaces = ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'];

/** A browser to start: its program, and what its environment needs beyond this process's. */
interface BrowserProgram {
  readonly path: string;
  readonly environment: Readonly<Record<string, string>>;
}

/** The browser installed on this machine, if there is one. */
function systemChromium(): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const named = folders.flatMap((folder) => systemNames.map((name) => join(folder, name)));
  return [...named, ...otherSystemPlaces].find((path) => existsSync(path));
}

// The package's own list of fonts names folders of a cloud function. Without one font no text is drawn at all, not even
// in the fonts of the page.
const fontList = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "urn:fontconfig:fonts.dtd">
<fontconfig>
  <dir prefix="relative">fonts</dir>
  <cachedir prefix="xdg">fontconfig</cachedir>
</fontconfig>
`;

/**
 * The browser that a development package carries, unpacked into the project's cache folder on first use.
 * It runs without root and brings its own libraries and fonts.
 */
async function packagedChromium(): Promise<BrowserProgram> {
  const home = join(cacheFolder, 'chromium');
  if (!existsSync(home)) {
    await mkdir(cacheFolder, { recursive: true });
    const aside = await mkdtemp(join(cacheFolder, 'chromium-'));
    // The package unpacks into the folder for temporary files, and with its libraries only where it
    // believes to run as a cloud function.
    const changed = { TMPDIR: aside, AWS_EXECUTION_ENV: 'nodejs20.x' };
    const before = Object.keys(changed).map((name) => [name, process.env[name]] as const);
    Object.assign(process.env, changed);
    try {
      const { default: packaged } = await import('@sparticuz/chromium');
      await packaged.executablePath();
      await writeFile(join(aside, 'fonts', 'fonts.conf'), fontList);
    } finally {
      for (const [name, value] of before) {
        if (value === undefined) delete process.env[name];
        else process.env[name] = value;
      }
    }
    // Renamed when complete, so that a second process never starts half a browser; the first one wins.
    if (existsSync(home)) await rm(aside, { recursive: true });
    else await rename(aside, home);
  }
  return {
    path: join(home, 'chromium'),
    environment: {
      LD_LIBRARY_PATH: join(home, 'al2023', 'lib'),
      FONTCONFIG_PATH: join(home, 'fonts'),
      XDG_CACHE_HOME: join(home, 'cache'),
    },
  };
}

/** The browser to use: the one CHROMIUM_PATH names, else the machine's own, else the packaged one. */
async function findBrowser(): Promise<BrowserProgram> {
  const named = process.env.CHROMIUM_PATH;
  if (named !== undefined && named !== '') {
    if (!existsSync(named)) throw new Error(`CHROMIUM_PATH names ${named}, which does not exist`);
    return { path: named, environment: {} };
  }
  const installed = systemChromium();
  if (installed !== undefined) return { path: installed, environment: {} };
  return packagedChromium();
}

// A container has no user namespaces for the sandbox and little shared memory; only our own page is loaded.
const containerArguments = ['--disable-dev-shm-usage', '--disable-gpu'];

/** A headless Chromium of its own process group and profile, which can be killed as a power cut would. */
export interface KillableBrowser {
  readonly browser: Browser;
  /** Ends all its processes at once, and resolves when they are gone. */
  readonly kill: () => Promise<void>;
}

/** Starts a Chromium that keeps its storage in a folder, so that the next one started there finds it. */
export async function launchKillable(profile: string): Promise<KillableBrowser> {
  const { path, environment } = await findBrowser();
  const child = spawn(
    path,
    [
      '--headless',
      '--no-sandbox',
      '--no-first-run',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      ...containerArguments,
      'about:blank',
    ],
    { detached: true, env: { ...process.env, ...environment }, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const kill = async (): Promise<void> => {
    // The group is the browser and all that it started; it leads the group, so the number is no one else's.
    if (child.pid !== undefined && child.exitCode === null && child.signalCode === null)
      process.kill(-child.pid, 'SIGKILL');
    await ended;
  };
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
    child.once('error', reject);
    child.once('exit', () => reject(new Error(`the browser ended: ${said}`)));
  });
  return { browser: await chromium.connectOverCDP(address), kill };
}

/** Starts a headless Chromium for a test; the test closes it. Needs no root and no network. */
export async function launchBrowser(): Promise<Browser> {
  const { path, environment } = await findBrowser();
  const inherited = Object.entries(process.env).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value] as const],
  );
  return chromium.launch({
    executablePath: path,
    env: { ...Object.fromEntries(inherited), ...environment },
    chromiumSandbox: false,
    args: containerArguments,
  });
}
