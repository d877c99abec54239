import { html, nothing, type TemplateResult } from 'lit';
import { brokenLinks, type Item, linkedLines, openLinks } from '../../notebook/index.ts';
import { idInWords, labelOf, localName, math, resultText, symbolMath } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { drawMarkup } from '../style/markup.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import { placeOfId } from '../view-model/places.ts';
import type { ListParts } from './stated-list.ts';

/**
 * Draws the links that are broken, with what they led to; what is to be linked, with what it stood for; and what is linked,
 * with the line its value comes from.
 */
export function drawLinkList(session: Session, parts: ListParts): TemplateResult | typeof nothing {
  const { notebook, units } = session;
  const rows = [
    ...brokenLinks(notebook).map(({ item, to }) => ({
      item,
      from: html`<span class="broken">link broken</span>: it took its value from ${idInWords(to, notebook, item.sheet)}, which is not in the book any more`,
    })),
    ...openLinks(notebook).map(({ item, toLink }) => ({
      item,
      from: html`<span class="open">to be linked</span>: it stood for ${toLink}`,
    })),
    ...linkedLines(notebook).map(({ item, from }) => {
      const sheet = notebook.book.sheets.find(({ key }) => key === from.sheet)?.title || from.sheet;
      return {
        item,
        from: html`${labelOf(from)}, ${drawMarkup(math(symbolMath(localName(from))))} on “${sheet}”${isStated(item) ? '; another value is stated in its place' : ''}`,
      };
    }),
  ];
  if (rows.length === 0) return nothing;
  return html`<h3 id="links" tabindex="-1">${overviewTitles.links}</h3>
    <table aria-label="Linked values">
      <thead>
        <tr>
          <th scope="col" class="sheet">Sheet</th>
          <th scope="col" class="name">Symbol</th>
          <th scope="col">Description</th>
          <th scope="col" class="number">Value</th>
          <th scope="col">From</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(({ item, from }, at) => {
          const { number, unit } = resultText(notebook, item, units);
          return html`<tr class="goes">
            ${parts.sheetCell(item.sheet, rows[at - 1]?.item.sheet)}
            <td class="name">${drawMarkup(math(symbolMath(localName(item))))}</td>
            <td>${parts.goButton(labelOf(item), placeOfId(notebook, item.id))}</td>
            <td class="number">${number}${unit === '°' ? '' : ' '}${unit}</td>
            <td class="why">${from}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
}

function isStated(item: Item): boolean {
  return item.kind === 'formula' && item.stated !== undefined;
}
