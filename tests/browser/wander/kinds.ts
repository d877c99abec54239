import type { Kind } from './kind.ts';
import { aroundKinds } from './kinds/around.ts';
import { choiceKinds } from './kinds/choices.ts';
import { clipboardKinds } from './kinds/clipboard.ts';
import { historyKinds } from './kinds/history.ts';
import { keylessKinds } from './kinds/keyless.ts';
import { keyKinds } from './kinds/keys.ts';
import { lineKinds } from './kinds/lines.ts';
import { menuKinds } from './kinds/menus.ts';
import { pointerKinds } from './kinds/pointer.ts';
import { statementKinds } from './kinds/statements.ts';
import { typingKinds } from './kinds/typing.ts';

/** Everything a person without a plan does. */
export const kinds: readonly Kind<unknown>[] = [
  ...pointerKinds,
  ...typingKinds,
  ...keyKinds,
  ...aroundKinds,
  ...historyKinds,
  ...lineKinds,
  ...clipboardKinds,
  ...menuKinds,
  ...keylessKinds,
  ...statementKinds,
  ...choiceKinds,
];
