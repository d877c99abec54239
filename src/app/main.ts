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

/** A new version waits until the person says yes. Only the tab in which that was said is loaded anew. */
const update = registerSW({
  onNeedRefresh: () => {
    app.newVersion = () => {
      changing = true;
      void update();
    };
  },
  onNeedReload: () => {
    if (changing) location.reload();
    else app.changedVersion = true;
  },
});
