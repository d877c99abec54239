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

/** Starts a headless Chromium for a test; the test closes it. Needs no root and no network. */
export async function launchBrowser(): Promise<Browser> {
  const { path, environment } = await findBrowser();
  const inherited = Object.entries(process.env).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value] as const],
  );
  return chromium.launch({
    executablePath: path,
    env: { ...Object.fromEntries(inherited), ...environment },
    // A container has no user namespaces for the sandbox and little shared memory; only our own page is loaded.
    chromiumSandbox: false,
    args: ['--disable-dev-shm-usage', '--disable-gpu'],
  });
}
