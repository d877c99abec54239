import { Overview } from './overview/overview.ts';
import { SidePanel } from './panel/side-panel.ts';
import { BookSettings } from './settings/book-settings.ts';
import { DetailsDialog } from './settings/details-dialog.ts';
import { SheetDialog } from './settings/sheet-dialog.ts';
import { TableRowsDialog } from './settings/table-rows-dialog.ts';
import { Desk } from './shell/desk.ts';
import { GoToDialog } from './shell/go-to-dialog.ts';
import { KeysDialog } from './shell/keys-dialog.ts';
import { SheetList } from './shell/sheet-list.ts';
import { SheetListMenu } from './shell/sheet-list-menu.ts';
import { StatusBar } from './shell/status-bar.ts';
import { TitleBlock } from './shell/title-block.ts';
import { Told } from './shell/told.ts';
import { TopBar } from './shell/top-bar.ts';
import './sheet/quay-sheet.ts';

customElements.define('quay-top-bar', TopBar);
customElements.define('quay-sheet-list-menu', SheetListMenu);
customElements.define('quay-sheet-dialog', SheetDialog);
customElements.define('quay-sheet-list', SheetList);
customElements.define('quay-title-block', TitleBlock);
customElements.define('quay-desk', Desk);
customElements.define('quay-overview', Overview);
customElements.define('quay-told', Told);
customElements.define('quay-status-bar', StatusBar);
customElements.define('quay-side-panel', SidePanel);
customElements.define('quay-go-to', GoToDialog);
customElements.define('quay-book-settings', BookSettings);
customElements.define('quay-details', DetailsDialog);
customElements.define('quay-table-rows', TableRowsDialog);
customElements.define('quay-keys', KeysDialog);

// What an open book needs, loaded when the first book opens; the start page needs none of it.
export { saveBookFile } from './keeping/files.ts';
export { openSession } from './session/session.ts';
export { saveTable } from './table/save-table.ts';
