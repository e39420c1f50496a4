// @ts-nocheck
import tseslint from "typescript-eslint";

/** The folders that know nothing of files, clocks, sockets or chance: everything but the shell. */
const pureFolders = ["src/**/*.ts"];
const shellFiles = ["src/{cli,serve,web}/**/*.ts", "src/{lock,write-whole}.ts"];

export default tseslint.config(
  { ignores: ["dist/", "src/compiled/", "node_modules/", "coverage/"] },
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        projectService: { allowDefaultProject: ["eslint.config.js"] },
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true }],
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/explicit-module-boundary-types": "error",
    },
  },
  {
    files: pureFolders,
    ignores: shellFiles,
    rules: {
      "no-restricted-imports": ["error", { patterns: ["node:*", "*/cli/*", "*/serve/*"] }],
      "no-restricted-properties": [
        "error",
        { object: "Date", property: "now", message: "Today is a parameter." },
        { object: "Math", property: "random", message: "The core knows no chance." },
        { object: "DateTime", property: "now", message: "Today is a parameter." },
        { object: "DateTime", property: "local", message: "Name the garden's zone." },
      ],
      "no-restricted-syntax": [
        "error",
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: "Today is a parameter.",
        },
      ],
    },
  },
  {
    files: ["**/*.js"],
    ...tseslint.configs.disableTypeChecked,
    rules: {
      ...tseslint.configs.disableTypeChecked.rules,
      "@typescript-eslint/explicit-module-boundary-types": "off",
    },
  },
);
