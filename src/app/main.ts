import { StartPage } from './start-page.ts';

customElements.define('quaybook-start-page', StartPage);
