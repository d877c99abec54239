import type { DirectiveResult } from 'lit/directive.js';
import { templateContent } from 'lit/directives/template-content.js';

/** As many different pieces of markup are kept read; the oldest goes first. */
const MOST = 2000;

const templates = new Map<string, HTMLTemplateElement>();

/** Draws mathematics or a picture that the program wrote as text. Text read once is copied from then on. */
export function drawMarkup(text: string): DirectiveResult {
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
