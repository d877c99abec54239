import { registerSW } from 'virtual:pwa-register';
import './style/fonts.css';
import './style/tokens.css';
import './page.css';
import { QuayApp } from './quay-app.ts';
import { StartPage } from './start/start-page.ts';
import { browserStore } from './storage/browser-store.ts';

customElements.define('quay-start-page', StartPage);
customElements.define('quay-app', QuayApp);

const app = new QuayApp();
app.store = browserStore(() => Date.now());
document.body.append(app);

let changing = false;

/**
 * Has the waiting version take over, and loads this page anew once it has. The page need not be under a service worker
 * itself: the first one that a person ever opens is not.
 */
async function changeVersion(): Promise<void> {
  changing = true;
  const waiting = (await navigator.serviceWorker.getRegistration())?.waiting;
  waiting?.addEventListener('statechange', () => {
    if (waiting.state === 'activated') location.reload();
  });
  if (waiting) await update();
  // Another tab has changed to it already.
  else location.reload();
}

/** A new version waits until the person says yes. Only the tab in which that was said is loaded anew. */
const update = registerSW({
  onNeedRefresh: () => {
    app.newVersion = () => void changeVersion();
  },
  onNeedReload: () => {
    if (!changing) app.changedVersion = true;
  },
});
