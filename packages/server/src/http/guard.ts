import { Refused } from "./problem.ts";

/**
 * Refuses requests that a strange page makes a browser send. A name of somebody else that leads to this machine is
 * told by the `Host`, a page of somebody else by `Origin` and `Sec-Fetch-Site`.
 * @param hosts `name:port` of every address under which this server is reached
 */
export function guard(request: Request, path: string, hosts: ReadonlySet<string>): void {
  const url = new URL(request.url);
  const host = (request.headers.get("host") ?? url.host).toLowerCase();
  if (!hosts.has(host))
    throw new Refused(
      "forged",
      `This server is not "${host.slice(0, 120)}". Open it by one of its own addresses.`,
    );
  const origin = request.headers.get("origin");
  if (origin !== null && !isOwn(origin, host))
    throw new Refused("forged", "A page from elsewhere sent this. Open the app by one of its own addresses.");
  const site = request.headers.get("sec-fetch-site");
  if (path.startsWith("/api/") && site !== null && site !== "same-origin" && site !== "none")
    throw new Refused(
      "forged",
      "A page from elsewhere asked for this. Open the app by one of its own addresses.",
    );
}

/** An origin is ours only when it is the very address that was asked. */
function isOwn(origin: string, host: string): boolean {
  try {
    const { host: from, protocol } = new URL(origin);
    return from.toLowerCase() === host && (protocol === "http:" || protocol === "https:");
  } catch {
    return false;
  }
}
