import { existsSync, readFileSync, renameSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { newest } from "./bundle.mjs";
import { oneAtATime } from "./one-at-a-time.mjs";
import { root } from "./run-step.mjs";

export const appFolder = join(root, "dist/app");
const source = join(root, "src/web");
/** Layers that run in a browser: a change in another one leaves the app as it is. */
const LAYERS = [
  "core",
  "geodesy",
  "text",
  "formats",
  "figures",
  "simulator",
  "records",
  "store",
  "exchange",
  "evidence",
  "sync",
  "web",
];

/** How the app is built: one place for the build and for tests that serve it from its sources. */
export async function viteConfig() {
  const { default: react } = await import("@vitejs/plugin-react");
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  return {
    configFile: false,
    root: source,
    base: "/",
    logLevel: "error",
    cacheDir: join(root, "node_modules/.vite"),
    define: { TOELINE_VERSION: JSON.stringify(version) },
    plugins: [react()],
    worker: { format: "es", rollupOptions: { treeshake: { moduleSideEffects } } },
    build: {
      target: "es2022",
      emptyOutDir: true,
      // everything in files of its own: a strict content policy allows neither data addresses nor scripts in the page
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      reportCompressedSize: false,
      chunkSizeWarningLimit: 4000,
      rollupOptions: { treeshake: { moduleSideEffects } },
    },
  };
}

/** Our modules do nothing when they are loaded but define things; style sheets and the two starting points do. */
const moduleSideEffects = (id) =>
  !id.startsWith(join(root, "src")) || /\.css(\?|$)|\/main\.tsx$|\/start-worker\.ts/.test(id);

/** Builds the app into dist/app if a source is newer than what is there. Says nothing unless it fails. */
export async function ensureAppBuilt() {
  if (isBuilt()) return;
  await oneAtATime("app", async () => {
    if (!isBuilt()) await buildApp();
  });
}

async function buildApp() {
  const { build } = await import("vite");
  const config = await viteConfig();
  const temporary = `${appFolder}.${process.pid}.tmp`;
  await build({ ...config, build: { ...config.build, outDir: temporary } });
  // a page that is being read stays whole until the new one is ready
  rmSync(appFolder, { recursive: true, force: true });
  renameSync(temporary, appFolder);
}

function isBuilt() {
  const page = join(appFolder, "index.html");
  if (!existsSync(page)) return false;
  const made = statSync(page).mtimeMs;
  const inputs = ["package.json", "package-lock.json", "scripts/bundle-app.mjs"].map((name) =>
    join(root, name),
  );
  const folders = LAYERS.map((layer) => join(root, "src", layer)).filter(existsSync);
  return (
    inputs.every((file) => statSync(file).mtimeMs <= made) &&
    folders.every((folder) => newest(folder) <= made)
  );
}
