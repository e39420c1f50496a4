/**
 * Makes the writing page out of `src/web`: a folder of static files for a web server, and
 * `feedround.html`, the same in one file that works by double click.
 *
 * `npm run build:web` writes it to `dist/web`, as `npm run build` does after the rest; tests make one
 * of their own.
 */
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { iconPng, iconSvg } from "./web-icons.js";

const root = fileURLToPath(new URL("..", import.meta.url));
const web = join(root, "src/web");

/** Twelve smoothings take a page less time than 30 kB more to fetch. */
const sharesWorkedOut = {
  name: "shares-worked-out",
  setup({ onLoad }) {
    onLoad({ filter: /\/src\/compiled\/daily-shares\.ts$/ }, () => ({
      contents: `import { dailyShares } from "../climate/smoothed-year.js";
let shares;
export default () => (shares ??= dailyShares());`,
      resolveDir: join(root, "src/compiled"),
    }));
  },
};

const bundled = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  platform: "browser",
  target: "es2022",
  charset: "utf8",
  loader: { ".yaml": "text" },
  legalComments: "none",
  logLevel: "warning",
  plugins: [sharesWorkedOut],
  write: false,
};

/** Writes all of it into a folder, which is emptied first; returns what is in which script, by esbuild. */
export async function buildWeb(dir = join(root, "dist/web")) {
  const [appScripts, workerScripts, app, worker, style] = await Promise.all([
    inChunks("app", dir),
    inChunks("worker", dir),
    oneScript("app"),
    oneScript("worker"),
    styleText(),
  ]);
  rmSync(dir, { recursive: true, force: true });
  mkdirSync(dir, { recursive: true });
  const scripts = [...appScripts.outputFiles, ...workerScripts.outputFiles];
  for (const { path, contents } of scripts) writeFileSync(path, contents);
  const put = (name, content) => writeFileSync(join(dir, name), content);
  put("app.css", style);
  put("icon.svg", iconSvg);
  put("manifest.webmanifest", JSON.stringify(manifest));

  const page = readFileSync(join(web, "index.html"), "utf8");
  const nonce = hashOf(app).slice(0, 22);
  const linked = page.replace("<!-- files -->", linkedFiles);
  const chunks = scripts.map(({ path }) => path.slice(dir.length + 1));
  const files = ["app.css", "icon.svg", "manifest.webmanifest", ...chunks];
  // The server's own policy names another nonce each time.
  const list = `<meta name="page-files" content="${files.join(" ")}" />`;
  put("file.html", linked.replace("<!-- policy -->", list).replace(oneFileLink, ""));
  put("index.html", withPolicy(linked, folderPolicy(nonce), nonce));
  put("feedround.html", oneFile(page.replace(oneFileLink, ""), { app, worker, style, nonce }));
  put(
    "service-worker.js",
    await serviceWorker(["./", ...files], hashOf(linked, style, ...chunks, app, worker)),
  );
  return { ...appScripts.metafile.outputs, ...workerScripts.metafile.outputs };
}

/** Where the page is a folder on the web, it can be taken along as one file. */
const oneFileLink = /\s*<footer id="one-file">[^]*?<\/footer>/;

const linkedFiles = `<link rel="manifest" href="manifest.webmanifest" />
    <link rel="icon" href="icon.svg" type="image/svg+xml" />
    <link rel="stylesheet" href="app.css" />
    <script type="module" src="app.js"></script>`;

function folderPolicy(nonce) {
  return [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data:",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ];
}

/** Nothing from anywhere: all of it stands in the file. */
function oneFile(page, { app, worker, style, nonce }) {
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${hashOf(app)}'`,
    `style-src 'nonce-${nonce}'`,
    "img-src data:",
    "worker-src blob:",
    "base-uri 'none'",
    "form-action 'none'",
  ];
  const icon = `data:image/svg+xml;base64,${Buffer.from(iconSvg).toString("base64")}`;
  const head = `<link rel="icon" href="${icon}" />\n<style nonce="${nonce}">${style}</style>`;
  const scripts = `<script type="text/plain" id="worker-script">${worker}</script>\n<script>${app}</script>`;
  return withPolicy(page, policy, nonce)
    .replace("<!-- files -->", () => head)
    .replace("</body>", () => `${scripts}\n</body>`);
}

function withPolicy(page, policy, nonce) {
  const metas = `<meta http-equiv="Content-Security-Policy" content="${policy.join("; ")}" />
    <meta name="csp-nonce" content="${nonce}" />`;
  return page.replace("<!-- policy -->", metas);
}

const manifest = {
  name: "Feedround: write a garden",
  short_name: "Feedround",
  start_url: "./",
  display: "standalone",
  background_color: "#f6f3ea",
  theme_color: "#1c5c43",
  icons: [
    { src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any maskable" },
    ...[192, 512].map((size) => ({
      // Inside, so that all files of the page are text.
      src: `data:image/png;base64,${iconPng(size).toString("base64")}`,
      sizes: `${size}x${size}`,
      type: "image/png",
    })),
  ],
};

/** A script and what it asks for later, each in a file of its own. */
function inChunks(name, outdir) {
  return build({
    ...bundled,
    entryPoints: [join(web, `${name}.ts`)],
    format: "esm",
    splitting: true,
    chunkNames: `${name}-[name]-[hash]`,
    outdir,
    metafile: true,
    plugins: [sharesWorkedOut, pastFaces],
  });
}

/**
 * A folder's face names what is in many files; esbuild puts all of them into the chunk of whoever uses
 * one. So each name is taken from the file that has it.
 */
const pastFaces = {
  name: "past-faces",
  setup({ onLoad }) {
    const homes = new Map();
    const homesIn = (face) => {
      if (!homes.has(face)) homes.set(face, namesOf(face));
      return homes.get(face);
    };
    onLoad({ filter: /\/src\/.*[.]ts$/ }, ({ path }) => ({
      loader: "ts",
      contents: readFileSync(path, "utf8").replace(
        /^(import|export) \{([^}]*)\} from "([^"]*\/index)[.]js";$/gm,
        (_, verb, names, from) =>
          listed(names)
            .filter((name) => !name.startsWith("type "))
            .map((name) => {
              const home = homesIn(resolve(dirname(path), `${from}.ts`)).get(name.split(" as ")[0]);
              return home === undefined ? "" : `${verb} { ${name} } from "${home}";`;
            })
            .join(" "),
      ),
    }));
  },
};

/** Each name of a face, and the file that it comes from, past the faces of rooms within. */
function namesOf(face) {
  const lines = readFileSync(face, "utf8").matchAll(/^export \{([^}]*)\} from "([^"]*)[.]js";$/gm);
  return new Map(
    [...lines].flatMap(([, names, from]) => {
      const file = resolve(dirname(face), `${from}.ts`);
      const inner = file.endsWith("/index.ts") ? namesOf(file) : undefined;
      return listed(names).map((name) => [name, inner?.get(name) ?? file]);
    }),
  );
}

function listed(names) {
  return names
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "");
}

/** A classic script with everything in it, safe inside a `<script>` element. */
async function oneScript(name) {
  const { outputFiles } = await build({
    ...bundled,
    entryPoints: [join(web, `${name}.ts`)],
    format: "iife",
  });
  // As a browser hashes it.
  return outputFiles[0].text.replaceAll("<!--", "<\\!--").replace(/\r\n?/g, "\n");
}

async function styleText() {
  const { outputFiles } = await build({
    ...bundled,
    entryPoints: [join(web, "page-style.ts")],
    format: "esm",
  });
  const code = `data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString("base64")}`;
  const { sharedStyle } = await import(code);
  return [sharedStyle, readFileSync(join(web, "app.css"), "utf8")].join("\n");
}

async function serviceWorker(files, version) {
  const { outputFiles } = await build({
    ...bundled,
    entryPoints: [join(web, "service-worker.ts")],
    format: "iife",
    define: { FILES: JSON.stringify(files), VERSION: JSON.stringify(version.slice(0, 16)) },
  });
  return outputFiles[0].text;
}

function hashOf(...texts) {
  const hash = createHash("sha256");
  for (const text of texts) hash.update(text);
  return hash.digest("base64");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildWeb();
