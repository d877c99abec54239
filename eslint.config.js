import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

/** Only what needs types and Biome therefore cannot see; Biome does all other linting. */
export default defineConfig(globalIgnores(['dist/', '.cache/', 'src/language/grammar/parser*']), {
  files: ['src/**/*.ts', 'tests/**/*.ts', 'bench/**/*.ts'],
  plugins: { '@typescript-eslint': tseslint.plugin },
  languageOptions: {
    parser: tseslint.parser,
    parserOptions: {
      project: ['tsconfig.json', 'src/app/tsconfig.json', 'src/cli/tsconfig.json', 'tests/tsconfig.json'],
    },
  },
  linterOptions: { reportUnusedDisableDirectives: 'error' },
  rules: {
    '@typescript-eslint/no-floating-promises': 'error',
    '@typescript-eslint/no-misused-promises': 'error',
    '@typescript-eslint/await-thenable': 'error',
    '@typescript-eslint/require-await': 'error',
    '@typescript-eslint/return-await': 'error',
    '@typescript-eslint/switch-exhaustiveness-check': [
      'error',
      { considerDefaultExhaustiveForUnions: true, requireDefaultForNonUnion: false },
    ],
    '@typescript-eslint/no-unnecessary-type-assertion': 'error',
    '@typescript-eslint/no-base-to-string': 'error',
    '@typescript-eslint/restrict-plus-operands': 'error',
    '@typescript-eslint/only-throw-error': 'error',
    '@typescript-eslint/prefer-promise-reject-errors': 'error',
    '@typescript-eslint/no-for-in-array': 'error',
    '@typescript-eslint/require-array-sort-compare': 'error',
    '@typescript-eslint/no-deprecated': 'error',
  },
});
