export {
  type Attributes,
  type Content,
  type ElementName,
  element,
  type Markup,
  none,
  together,
  writeMarkup,
} from './markup.ts';
