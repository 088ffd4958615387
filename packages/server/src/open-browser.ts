import { spawn } from "node:child_process";

/** How each system opens an address, and whether there is a screen to open it on. */
function opener(): readonly [command: string, ...args: string[]] | null {
  if (process.platform === "darwin") return ["open"];
  if (process.platform === "win32") return ["cmd", "/c", "start", ""];
  const { DISPLAY, WAYLAND_DISPLAY } = process.env;
  return (DISPLAY ?? WAYLAND_DISPLAY ?? "") === "" ? null : ["xdg-open"];
}

/** Opens the browser on an address. Where there is no screen, or no browser, nothing happens. */
export function openBrowser(address: string): void {
  const command = opener();
  if (command === null) return;
  const [program, ...args] = command;
  const child = spawn(program, [...args, address], { stdio: "ignore", detached: true });
  child.on("error", () => undefined);
  child.unref();
}
