export {
  type Attributes,
  type Content,
  type ElementName,
  element,
  type Markup,
  none,
  type PageContent,
  together,
  writeMarkup,
  writePage,
} from './markup.ts';
