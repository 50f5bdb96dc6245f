import { spawn } from "node:child_process";

/** Opens an address in the browser, if there is a screen. That it cannot is no failure: the address was printed. */
export function openInBrowser(
  address: string,
  environment: Readonly<Record<string, string | undefined>>,
): void {
  const [command, ...args] = openerOf(environment, address);
  if (command === undefined) return;
  const child = spawn(command, args, { stdio: "ignore", detached: true });
  child.on("error", () => {});
  child.unref();
}

function openerOf(
  environment: Readonly<Record<string, string | undefined>>,
  address: string,
): readonly string[] {
  if (environment["CI"] || environment["TOELINE_NO_BROWSER"] || environment["SSH_CONNECTION"]) return [];
  if (process.platform === "darwin") return ["open", address];
  if (process.platform === "win32") return ["explorer.exe", address];
  const hasScreen = environment["DISPLAY"] || environment["WAYLAND_DISPLAY"];
  return hasScreen ? ["xdg-open", address] : [];
}
