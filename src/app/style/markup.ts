import type { DirectiveResult } from 'lit/directive.js';
import { templateContent } from 'lit/directives/template-content.js';
import { type Markup, writeMarkup } from '../../markup/index.ts';

/** As many different pieces of markup are kept read; the oldest goes first. */
const MOST = 2000;

const templates = new Map<string, HTMLTemplateElement>();

/** Draws mathematics or a picture: the one place where the page reads markup. What was read once is copied from then on. */
export function drawMarkup(markup: Markup): DirectiveResult {
  const text = writeMarkup(markup);
  let template = templates.get(text);
  if (!template) {
    template = document.createElement('template');
    template.innerHTML = text;
    const [oldest] = templates.keys();
    if (templates.size >= MOST && oldest !== undefined) templates.delete(oldest);
    templates.set(text, template);
  }
  return templateContent(template);
}
