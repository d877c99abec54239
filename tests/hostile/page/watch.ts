import type { CDPSession, Page } from 'playwright-core';

/** Longer than this no task of the page may keep its thread busy, in milliseconds. */
const LONGEST = 1000;

/** What was seen of a page since the last look. */
export interface Seen {
  /** What harm was done, a sentence each. */
  readonly harms: readonly string[];
  /** The longest task, in milliseconds by the clock. */
  readonly longest: number;
}

/** Somebody who looks for harm in a page. */
export interface Watch {
  readonly look: () => Promise<Seen>;
}

/** Watches a page from before anything is loaded in it. */
export async function watchPage(page: Page, address: string): Promise<Watch> {
  const told: string[] = [];
  const { origin } = new URL(address);
  page.on('pageerror', (error) => told.push(`exception: ${error.stack ?? error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') told.push(`console: ${message.text()}`);
  });
  page.on('crash', () => told.push('the page crashed'));
  page.on('request', (request) => {
    if (!request.url().startsWith(origin) && !/^(blob|data):/.test(request.url()))
      told.push(`request: ${request.url()}`);
  });
  await page.addInitScript(watchInPage);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable');
  let spent = await threadTime(devtools);
  return {
    look: async () => {
      const { longest, strange } = await page.evaluate(() =>
        (globalThis as unknown as Watched).lookForHarm(),
      );
      const before = spent;
      spent = await threadTime(devtools);
      // A page that was loaded anew may have a thread of its own.
      const worked = spent < before ? spent : spent - before;
      const harms = [...told.splice(0), ...strange];
      // A task is timed by the clock; on a busy machine it may have waited for its core.
      if (longest > LONGEST && worked > LONGEST)
        harms.push(`freeze: ${Math.round(longest)} ms, of the core ${Math.round(worked)} ms`);
      return { harms, longest };
    },
  };
}

/** How long the thread of the page has worked, in milliseconds. */
async function threadTime(devtools: CDPSession): Promise<number> {
  const { metrics } = await devtools.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'ThreadTime')?.value ?? 0);
}

interface Watched {
  readonly lookForHarm: () => { readonly longest: number; readonly strange: readonly string[] };
}

/** Runs in the page, and sees nothing of here. */
function watchInPage(): void {
  let longest = 0;
  const tasks = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
  });
  tasks.observe({ type: 'longtask', buffered: true });
  const policy: string[] = [];
  addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
    policy.push(`content-security policy: ${violatedDirective} ${blockedURI}`),
  );
  const common = [Object, Array, String, Number, Function, Map, Promise, Element, HTMLElement, Event];
  const namesOfPrototypes = (): string =>
    common.map((of) => Object.getOwnPropertyNames(of.prototype).join()).join(';');
  const prototypes = namesOfPrototypes();

  /** Elements the app never makes, what carries the mark of a text, and what would run, load or send. */
  const isStrange = (element: Element): boolean =>
    /^(img|image|iframe|frame|object|embed|audio|video|base|meta|link|mglyph|annotation-xml|foreignobject|marquee|template)$/i.test(
      element.localName,
    ) ||
    (element.localName === 'script' && element.parentElement !== document.head) ||
    element.classList.contains('strange') ||
    [...element.attributes].some(
      ({ name, value }) =>
        /^(on.*|src|srcdoc|action|formaction|ping|xlink:href)$/i.test(name) ||
        (/^href$/i.test(name) && !value.startsWith('#')),
    );
  const elementsMadeOfText = (): readonly string[] => {
    const found: string[] = [];
    const visit = (root: ParentNode): void => {
      for (const element of root.querySelectorAll('*')) {
        if (isStrange(element)) found.push(`element: ${element.outerHTML.slice(0, 200)}`);
        if (element.shadowRoot) visit(element.shadowRoot);
      }
    };
    if (document.body) visit(document.body);
    return found;
  };
  const lookForHarm = () => {
    for (const { duration } of tasks.takeRecords()) longest = Math.max(longest, duration);
    const strange = [...policy.splice(0), ...elementsMadeOfText()];
    if ('strange' in globalThis) strange.push('a script of a text ran');
    if (namesOfPrototypes() !== prototypes) strange.push('a prototype was changed');
    const seen = { longest, strange };
    longest = 0;
    return seen;
  };
  Object.assign(globalThis, { lookForHarm });
}
