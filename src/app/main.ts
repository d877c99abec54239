import { registerSW } from 'virtual:pwa-register';
import './style/fonts.css';
import './style/tokens.css';
import './page.css';
import { browserLibrary } from './keeping/browser-library.ts';
import { QuayApp } from './quay-app.ts';
import { StartPage } from './start/start-page.ts';

customElements.define('quay-start-page', StartPage);
customElements.define('quay-app', QuayApp);

const app = new QuayApp();
app.library = browserLibrary(() => Date.now());
document.body.append(app);

/** A new version waits until the person says yes. */
const update = registerSW({
  onNeedRefresh: () => {
    app.newVersion = () => void update(true);
  },
});
