import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

/** Programs that are asked for, and the Debian package that has each. */
const PACKAGES = {
  python3: "python3",
  make: "make",
  "g++": "g++",
  soffice: "libreoffice-writer-nogui",
  pdfinfo: "poppler-utils",
  qpdf: "qpdf",
  chromium: "chromium",
};

/** What the first `npm ci` needs: one package is compiled. */
export const TO_INSTALL = ["python3", "make", "g++"];
/** What the tests need besides: readers of what we write that nobody here wrote, and a browser. */
export const TO_TEST = [...TO_INSTALL, "soffice", "pdfinfo", "qpdf", "chromium"];

/** Sees to it that programs are there: installs them on Debian as root, and says elsewhere what is missing. */
export function ensureMachine(programs) {
  // there, compilers are not found by name; npm says itself what it lacks
  if (process.platform === "win32") return;
  const missing = programs.filter((program) => !isThere(program));
  if (missing.length === 0) return;
  const packages = missing.map((program) => PACKAGES[program]);
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !onPath("apt-get")) {
    console.error(
      `This machine lacks ${missing.join(", ")}. On Debian: apt-get install ${packages.join(" ")}`,
    );
    process.exit(2);
  }
  console.log(`Installing ${packages.join(", ")} …`);
  const lock = ["-o", "DPkg::Lock::Timeout=600"];
  apt([...lock, "update", "-q"]);
  apt([...lock, "install", "-y", "-q", "--no-install-recommends", ...packages]);
}

function isThere(program) {
  if (program === "chromium" && process.env.CHROMIUM) return existsSync(process.env.CHROMIUM);
  return onPath(program);
}

const onPath = (program) =>
  (process.env.PATH ?? "").split(delimiter).some((folder) => existsSync(join(folder, program)));

function apt(args) {
  const done = spawnSync("apt-get", args, {
    encoding: "utf8",
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    maxBuffer: 64 * 1024 * 1024,
  });
  if (done.status === 0) return;
  console.error(done.error?.message ?? `${done.stdout}${done.stderr}`);
  console.error("apt-get could not install what is missing (see above).");
  process.exit(2);
}
