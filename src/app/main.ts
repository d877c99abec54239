import { registerSW } from 'virtual:pwa-register';
import './style/fonts.css';
import './style/tokens.css';
import './page.css';
import { keptLibrary } from './keeping/kept-library.ts';
import { SidePanel } from './panel/side-panel.ts';
import { QuayApp } from './quay-app.ts';
import './sheet/quay-sheet.ts';
import { GoToDialog } from './shell/go-to-dialog.ts';
import { KeysDialog } from './shell/keys-dialog.ts';
import { SheetList } from './shell/sheet-list.ts';
import { StatusBar } from './shell/status-bar.ts';
import { TitleBlock } from './shell/title-block.ts';
import { TopBar } from './shell/top-bar.ts';
import { StartPage } from './start/start-page.ts';

customElements.define('quay-top-bar', TopBar);
customElements.define('quay-sheet-list', SheetList);
customElements.define('quay-title-block', TitleBlock);
customElements.define('quay-status-bar', StatusBar);
customElements.define('quay-side-panel', SidePanel);
customElements.define('quay-go-to', GoToDialog);
customElements.define('quay-keys', KeysDialog);
customElements.define('quay-start-page', StartPage);
customElements.define('quay-app', QuayApp);

const app = new QuayApp();
app.library = keptLibrary(() => Date.now());
document.body.append(app);

/** A new version waits until the person says yes. */
const update = registerSW({
  onNeedRefresh: () => {
    app.newVersion = () => void update(true);
  },
});
